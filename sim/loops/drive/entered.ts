/** The axis as the drive will run it: with the integers that are entered and at the drive's own sample periods. */
import type { Scenario } from '../../scenario/index.ts'
import { type DriveScales, type DriveSetting, driveSettings } from './settings.ts'

export interface Entered {
  scenario: Scenario
  /** Periods that the margins are for [s]: whole multiples of the current loop's period and of each other, at least as long as those asked for. */
  samplePeriod: number
  forceSamplePeriod: number
  /** Settings that do not fit their word, which count as they are wanted. */
  unfit: DriveSetting[]
}

/** Throws as driveSettings does. */
export function enteredScenario(scenario: Scenario, scales: DriveScales): Entered {
  const settings = driveSettings(scenario, scales)
  const unfit = settings.filter(({ overflow }) => overflow)
  const samplePeriod = multiple(scales.samplePeriod, 1 / scenario.drive.currentRate)
  const forceSamplePeriod = multiple(scales.forceSamplePeriod, samplePeriod)
  const means = new Map(settings.map(({ path, means, value, overflow }) => [path, overflow ? value : means]))
  const { servo, strategies } = scenario
  const { sensedForce } = strategies
  const gains = (path: string, sample: number) => {
    const ki = means.get(`${path}.ki`)!
    // The drive's sum has the present error in it; the trapezoidal rule of the bench has half of it.
    return { kp: means.get(`${path}.kp`)! + (ki * sample) / 2, ki }
  }
  const at = (path: string) => means.get(path)!
  return {
    scenario: {
      ...scenario,
      servo: {
        ...servo,
        ...gains('servo', samplePeriod),
        kd: at('servo.kd'),
        speedFilter: at('servo.speedFilter'),
        rate: 1 / samplePeriod,
      },
      strategies: {
        ...strategies,
        sensedForce: {
          ...sensedForce,
          ...gains('strategies.sensedForce', forceSamplePeriod),
          kd: at('strategies.sensedForce.kd'),
          velocity: gains('strategies.sensedForce.velocity', samplePeriod),
          rate: 1 / forceSamplePeriod,
        },
      },
    },
    samplePeriod,
    forceSamplePeriod,
    unfit,
  }
}

/** The shortest whole multiple of `unit` that is no shorter than `wanted`. */
const multiple = (wanted: number, unit: number) => unit * Math.max(1, Math.ceil(wanted / unit - 1e-6))
