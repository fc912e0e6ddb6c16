/**
 * What the comparison with odex runs on, and how far two runs of it lie apart. The teapot's axis from 3 mm open:
 * approach, impact and clamp within 0.1 s, without the steps of the converters, which would make two runs part at random.
 */

import { type Edit, editScenario, PRESETS, type Scenario, strategyOf, travelToContact } from '../../sim/index.ts'
import { runOf } from '../checks/support.ts'
import type { Sampled } from './odex-axis.ts'

const EDITS: Edit[] = [
  { path: 'jaws.opening', value: 0.121 },
  { path: 'drive.currentNoise', value: 0 },
  { path: 'drive.currentResolution', value: 0 },
  { path: 'sensors.encoder.resolution', value: 0 },
  { path: 'actuator.motor.thermal.windingResistance', value: 0.001 },
  { path: 'actuator.motor.thermal.housingResistance', value: 0.001 },
  { path: 'arm.moves', value: [] },
]

/** The support stays under the part to the last sample: its sliding is no part of the comparison. */
export function smoothScenario(duration: number): Scenario {
  const edits = [...EDITS, { path: 'run.duration', value: duration }, { path: 'arm.lift', value: duration - 5e-5 }]
  const checked = editScenario(PRESETS.find(({ id }) => id === 'teapot')!.scenario, edits)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

/**
 * Force and current of the real loop at the end of each sample, for at most 2,000 samples, of which the record keeps every one; its
 * step `finer` times divided.
 */
export function fixedStep(scenario: Scenario, finer = 1): Pick<Sampled, 'force' | 'current'> {
  const { traces } = runOf(scenario, strategyOf('current-clamp'), finer)
  const { jaws, part } = scenario
  const contact = (part.stiffness * jaws.padStiffness) / (part.stiffness + 0.5 * jaws.padStiffness)
  const swallowed = (2 * part.damping * jaws.padStiffness) / (jaws.padStiffness + 2 * part.stiffness)
  const gap = travelToContact(scenario)
  // The recorded force is the highest of the sample; this is the one at its end, as odex states it.
  const force = traces.travel.map((travel, k) =>
    Math.max(0, contact * Math.max(0, travel - gap) * (1 + swallowed * traces.speed[k]!)),
  )
  return { force, current: traces.current }
}

const rms = (values: Float64Array) => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)

/** Root mean square of the difference in force over that of the reference's force. */
export function forceError(run: Pick<Sampled, 'force'>, reference: Pick<Sampled, 'force'>): number {
  return rms(reference.force.map((value, k) => run.force[k]! - value)) / rms(reference.force)
}
