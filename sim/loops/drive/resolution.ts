/** What one unit of each reading and each output of the drive amounts to. */
import { forcePerAmpereAt } from '../../axis/flux.ts'
import { jobOf } from '../../job/index.ts'
import type { Scenario } from '../../scenario/index.ts'
import { forceSlopes } from '../design/axis-figures.ts'
import type { DriveScales } from './settings.ts'

export interface DriveResolution {
  id: 'travel' | 'speed' | 'force' | 'current' | 'wanted-speed'
  /** One unit [m or rad, m/s or rad/s, N or N·m, A]. */
  step: number
  /**
   * What it does to the force at one contact [N]: one unit of current lasting, the motor from cold; one unit of the force loop's output for one of its
   * periods, on the stiffest part. Null for a reading.
   */
  force: number | null
}

export function driveResolutions(scenario: Scenario, scales: DriveScales): DriveResolution[] {
  const { countsPerMetre, amperesPerUnit, newtonsPerUnit, samplePeriod, forceSamplePeriod } = scales
  const speed = 1 / (countsPerMetre * samplePeriod)
  const slopes = forceSlopes(scenario)
  return [
    { id: 'travel', step: 1 / countsPerMetre, force: null },
    { id: 'speed', step: speed, force: null },
    { id: 'force', step: newtonsPerUnit, force: null },
    {
      id: 'current',
      step: amperesPerUnit,
      force: (amperesPerUnit * forcePerAmpereAt(scenario.actuator)) / jobOf(scenario).workOf(scenario).perEffort,
    },
    { id: 'wanted-speed', step: speed, force: slopes && slopes.stiffest * speed * forceSamplePeriod },
  ]
}
