/** What the simulation takes for granted, in short sentences with the figures of the scenario. */
import type { Scenario } from '../../../sim/index.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import type { UnitSystem } from '../../read/units.ts'

export function assumed(scenario: Scenario, units: UnitSystem): string[] {
  const { part, run } = scenario
  const at = (path: string) => textAt(scenario, path, units)
  return [
    'Each grip is that of one part of exactly the stated size, stiffness and limits: parts scatter only in shares of many parts.',
    `Contact by Hunt and Crossley, force over flattening to the power ${part.exponent}; ${
      part.relaxation.fraction > 0
        ? `${at('part.relaxation.fraction')} of the force relaxes as one Maxwell element of ${at('part.relaxation.time')}`
        : 'the part does not relax'
    }.`,
    'The part slides and turns in the pads under one limit of their friction, which depends on load only.',
    `Jaws, guides and arm are stiff but for the pads and a transmission of ${at('actuator.transmission.stiffness')}.`,
    'Axis friction is a bristle model with constant coefficients: no wear, dirt, run-in or temperature in it.',
    'The amplifier is an ideal voltage source up to its bus voltage; no saturation of iron.',
    `Heat in two nodes, winding and housing, ${
      run.cycle === null ? 'from cold' : `in the steady state of a ${at('run.cycle')} cycle`
    }.`,
    'The arm follows its jerk-limited moves exactly and does not vibrate.',
  ]
}
