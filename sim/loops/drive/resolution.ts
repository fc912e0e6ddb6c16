/** What one unit of each reading and each output of the drive amounts to. */
import { forcePerAmpereAt } from '../../axis/flux.ts'
import { contactsOf } from '../../job/grip/geometry.ts'
import type { Scenario } from '../../scenario/index.ts'
import { forceSlopes } from '../design/axis-figures.ts'
import type { DriveScales } from './settings.ts'

export interface DriveResolution {
  id: 'travel' | 'speed' | 'force' | 'current' | 'wanted-speed'
  /** One unit, in SI. */
  step: number
  unit: 'm' | 'm/s' | 'N' | 'A'
  /**
   * What it does to the force at one contact [N]: one unit of current lasting, the motor from cold; one unit of the force loop's output for one of its
   * periods, on the stiffest part. Null for a reading.
   */
  force: number | null
}

export function driveResolutions(scenario: Scenario, scales: DriveScales): DriveResolution[] {
  const { countsPerMetre, amperesPerUnit, newtonsPerUnit, samplePeriod, forceSamplePeriod } = scales
  const speed = 1 / (countsPerMetre * samplePeriod)
  const { stiffest } = forceSlopes(scenario)
  return [
    { id: 'travel', step: 1 / countsPerMetre, unit: 'm', force: null },
    { id: 'speed', step: speed, unit: 'm/s', force: null },
    { id: 'force', step: newtonsPerUnit, unit: 'N', force: null },
    {
      id: 'current',
      step: amperesPerUnit,
      unit: 'A',
      force: (amperesPerUnit * forcePerAmpereAt(scenario.actuator)) / contactsOf(scenario),
    },
    { id: 'wanted-speed', step: speed, unit: 'm/s', force: stiffest * speed * forceSamplePeriod },
  ]
}
