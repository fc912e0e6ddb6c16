/** What may save a web's tension on the side of rolls, span and idlers. */
import type { JobRescue } from '../job.ts'
import { turnToTaut } from './fill.ts'
import type { WebJudgement } from './result.ts'
import { webIn } from './scenario.ts'

/** Turn by which the slack at the start may be off [rad]; common practice, no source. */
const CLEAR = 0.05

export const webRescue: JobRescue<WebJudgement> = {
  parameters: [
    { path: 'follow.inertia', cost: 'setting' },
    { path: 'follow.losses', cost: 'setting' },
    { path: 'span.length', cost: 'mechanics' },
    {
      path: 'idlers.coulomb',
      cost: 'mechanics',
      along: (scenario, drag) => [
        { path: 'idlers.breakaway', value: Math.max(webIn(scenario).idlers.breakaway, drag) },
      ],
    },
    { path: 'idlers.mass', cost: 'mechanics' },
    { path: 'roll.inertia', cost: 'mechanics' },
    { path: 'roll.runout', cost: 'tooling' },
    { path: 'line.runout', cost: 'tooling' },
  ],
  creep: (scenario) => ({ none: 0, most: turnToTaut(scenario), shortest: CLEAR, tried: CLEAR, sensible: 0.2 }),
  clear: CLEAR,
  alike: { stretched: 'too much', torn: 'too much' },
  worsens: new Set(['slack', 'stretched'] as const),
  supported: false,
}
