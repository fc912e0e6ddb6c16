/** What may save a joint on the side of bushing, bore and frame. */
import type { Edit, Scenario } from '../../scenario/index.ts'
import type { JobRescue } from '../job.ts'
import { seatDepth, tangent } from './fill.ts'
import type { PressJudgement } from './result.ts'
import { pressIn } from './scenario.ts'

/** Places of bore and shoulder repeat to this [m]; common practice for turned parts, no source. */
const CLEAR = 5e-5

export const pressRescue: JobRescue<PressJudgement> = {
  parameters: [
    {
      path: 'bushing.interference',
      cost: 'tooling',
      along: (scenario, interference) => longerChamfer(scenario, interference, pressIn(scenario).bushing.chamfer.angle),
      first: 5e-6,
    },
    {
      path: 'bushing.chamfer.angle',
      cost: 'tooling',
      along: (scenario, angle) => longerChamfer(scenario, pressIn(scenario).bushing.interference, angle),
    },
    { path: 'bushing.tilt', cost: 'tooling', first: 0.001 },
    {
      path: 'joint.friction.pressing',
      cost: 'tooling',
      along: (scenario, friction) => [
        { path: 'joint.friction.static', value: Math.max(pressIn(scenario).joint.friction.static, friction) },
      ],
      first: 0.05,
    },
    { path: 'ram.stiffness', cost: 'mechanics' },
  ],
  creep(scenario) {
    const whole = pressIn(scenario).ram.gap + seatDepth(scenario)
    return { none: 0, most: whole, shortest: CLEAR, tried: CLEAR, sensible: 1e-3 }
  },
  clear: CLEAR,
  alike: { tilted: 'above the band' },
  // Deeper, or later in the run, a force may still leave the band upwards or go over its limit.
  worsens: new Set(['slack', 'tilted', 'short'] as const),
  supported: false,
}

/** The cone has to take up half of the interference at its angle. */
function longerChamfer(scenario: Scenario, interference: number, angle: number): Edit[] {
  const { length } = pressIn(scenario).bushing.chamfer
  const least = Math.max(0, interference) / 2 / tangent(angle)
  return [{ path: 'bushing.chamfer.length', value: Math.max(length, Number((1.01 * least).toPrecision(3))) }]
}
