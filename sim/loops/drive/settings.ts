/** Gains, limits and thresholds in a drive's own integers, from the scale factors that its manual gives. */
import type { Scenario } from '../../scenario/index.ts'

export interface DriveScales {
  /** Encoder counts for each metre of jaw travel. */
  countsPerMetre: number
  /** One unit of the drive's current command [A]. */
  amperesPerUnit: number
  /** One unit of the gauge's converter [N]. */
  newtonsPerUnit: number
  /** Sample period with which the drive runs position and velocity loop, and force loop [s]. */
  samplePeriod: number
  forceSamplePeriod: number
  /** Bits by which the drive shifts a product of gain and error to the right. */
  shift: number
  /** Width of a parameter, sign included; products are kept twice as wide. */
  wordBits: 16 | 32
}

/** How often each scale factor multiplies in the integer of a setting, negative where it divides; of the shift, powers of 2. */
type Powers = Partial<Record<ScaleName, number>>

export type ScaleName = Exclude<keyof DriveScales, 'wordBits'>

export interface DriveSetting {
  path: string
  label: string
  /** Value of the scenario, in SI. */
  value: number
  unit: string
  powers: Powers
  /** Nearest integer, and the value that it means. */
  integer: number
  means: number
  /** (means − value)/value; null for a value of 0. */
  error: number | null
  /** The integer does not fit the word: the drive would refuse or wrap it. */
  overflow: boolean
  /** A value that is not 0 became 0. */
  lost: boolean
  /** For a gain: the largest error [SI] whose product with it still fits; null for others and for a gain of 0. */
  largestError: number | null
}

/** The scales that a scenario itself suggests: its encoder, current and gauge steps where it has them, its servo rate. */
export function scalesFrom({ servo, drive, sensors, strategies }: Scenario): DriveScales {
  const { encoder, gauge } = sensors
  return {
    countsPerMetre: encoder.resolution > 0 ? Math.round(1 / encoder.resolution) : 1e6,
    amperesPerUnit: drive.currentResolution > 0 ? drive.currentResolution : 0.001,
    newtonsPerUnit: gauge.resolution > 0 ? gauge.resolution : 0.01,
    samplePeriod: 1 / servo.rate,
    forceSamplePeriod: 1 / strategies.sensedForce.rate,
    shift: 16,
    wordBits: 32,
  }
}

interface Row {
  path: string
  label: string
  value: number
  unit: string
  powers: Powers
  /** For a gain: drive units for each SI unit of the error that it multiplies. */
  error?: Powers
}

/** Drive units for each SI unit. */
export const scaleOf = (powers: Powers, scales: DriveScales): number =>
  Object.entries(powers).reduce(
    (product, [name, power]) => product * (name === 'shift' ? 2 ** scales.shift : scales[name as ScaleName]) ** power,
    1,
  )

/** Largest integer of a word. */
export const largestInteger = ({ wordBits }: Pick<DriveScales, 'wordBits'>) => 2 ** (wordBits - 1) - 1

/**
 * The drive computes, each sample, (Kp·e + Ki·Σe + Kd·Δe) >> shift with e in counts (position), counts a sample (speed) or gauge
 * units (force), Σe with the present sample in it, and gives current units, or for the force loop counts a sample. Throws a
 * RangeError for a scale that is not above 0 or a shift outside 0 … 31.
 */
export function driveSettings(scenario: Scenario, scales: DriveScales): DriveSetting[] {
  checkScales(scales)
  const most = largestInteger(scales)
  return rowsOf(scenario).map(({ path, label, value, unit, powers, error }) => {
    const scale = scaleOf(powers, scales)
    const integer = Math.round(value * scale)
    const means = integer / scale
    return {
      path,
      label,
      value,
      unit,
      powers,
      integer,
      means,
      error: value === 0 ? null : means / value - 1,
      overflow: Math.abs(integer) > most,
      lost: value !== 0 && integer === 0,
      largestError:
        error === undefined || integer === 0
          ? null
          : 2 ** (2 * scales.wordBits - 1) / Math.abs(integer) / scaleOf(error, scales),
    }
  })
}

function checkScales(scales: DriveScales): void {
  for (const [name, value] of Object.entries(scales)) {
    const whole = name === 'shift'
    if (whole ? Number.isInteger(value) && value >= 0 && value <= 31 : value > 0 && Number.isFinite(value)) continue
    throw new RangeError(`${name}: given ${value}, allowed ${whole ? 'a whole number from 0 to 31' : 'above 0'}`)
  }
}

const CURRENT: Powers = { amperesPerUnit: -1 }
const LENGTH: Powers = { countsPerMetre: 1 }
const FORCE: Powers = { newtonsPerUnit: -1 }
const SAMPLES: Powers = { samplePeriod: -1 }
/** Counts a sample, and their change from one to the next. */
const SPEED: Powers = { countsPerMetre: 1, samplePeriod: 1 }
const ACCELERATION: Powers = { countsPerMetre: 1, samplePeriod: 2 }

/** A gain gives `output` for each unit of `error`, times or over a period, and is shifted. */
function gainOf(output: Powers, error: Powers, period: Powers = {}): Powers {
  const made: Powers = { shift: 1 }
  const add = (powers: Powers, sign: number) => {
    for (const [name, power] of Object.entries(powers) as [ScaleName, number][])
      made[name] = (made[name] ?? 0) + sign * power
  }
  add(output, 1)
  add(error, -1)
  add(period, 1)
  return made
}

function rowsOf({ servo, approach, strategies }: Scenario): Row[] {
  const { thresholdStop, currentClamp, sensedForce } = strategies
  const plain = (path: string, label: string, value: number, unit: string, powers: Powers): Row => ({
    path,
    label,
    value,
    unit,
    powers,
  })
  return [
    ...servoGains(servo),
    plain('servo.currentLimit', 'Current limit', servo.currentLimit, 'A', CURRENT),
    plain('servo.speedFilter', 'Speed filter, samples', servo.speedFilter, 's', SAMPLES),
    plain('approach.speed', 'Approach speed', approach.speed, 'm/s', SPEED),
    plain('approach.acceleration', 'Acceleration', approach.acceleration, 'm/s²', ACCELERATION),
    plain('approach.creepSpeed', 'Creep speed', approach.creepSpeed, 'm/s', SPEED),
    plain('strategies.thresholdStop.threshold', 'Threshold', thresholdStop.threshold, 'A', CURRENT),
    plain('strategies.thresholdStop.confirmTime', 'Confirm time, samples', thresholdStop.confirmTime, 's', SAMPLES),
    plain('strategies.currentClamp.limit', 'Clamp current', currentClamp.limit, 'A', CURRENT),
    ...velocityGains(sensedForce.velocity),
    plain(`${IN_FORCE}.target`, 'Target force', sensedForce.target, 'N', FORCE),
    plain(`${IN_FORCE}.contactForce`, 'Contact force', sensedForce.contactForce, 'N', FORCE),
    ...forceGains(sensedForce),
    plain(`${IN_FORCE}.deadband`, 'Dead band', sensedForce.deadband, 'm/s', SPEED),
    plain(`${IN_FORCE}.speedLimit`, 'Speed limit', sensedForce.speedLimit, 'm/s', SPEED),
  ]
}

const IN_FORCE = 'strategies.sensedForce'
const IN_SPEED = `${IN_FORCE}.velocity`

const EACH_SAMPLE: Powers = { samplePeriod: 1 }

function servoGains({ kp, ki, kd, velocityFeedforward, accelerationFeedforward }: Scenario['servo']): Row[] {
  const onSpeed = gainOf(CURRENT, SPEED)
  return [
    {
      path: 'servo.kp',
      label: 'Position, proportional',
      value: kp,
      unit: 'A/m',
      powers: gainOf(CURRENT, LENGTH),
      error: LENGTH,
    },
    {
      path: 'servo.ki',
      label: 'Position, integral',
      value: ki,
      unit: 'A/(m·s)',
      powers: gainOf(CURRENT, LENGTH, EACH_SAMPLE),
      error: LENGTH,
    },
    { path: 'servo.kd', label: 'Position, derivative', value: kd, unit: 'A·s/m', powers: onSpeed, error: SPEED },
    {
      path: 'servo.velocityFeedforward',
      label: 'Speed feed-forward',
      value: velocityFeedforward,
      unit: 'A·s/m',
      powers: onSpeed,
      error: SPEED,
    },
    {
      path: 'servo.accelerationFeedforward',
      label: 'Acceleration feed-forward',
      value: accelerationFeedforward,
      unit: 'A·s²/m',
      powers: gainOf(CURRENT, ACCELERATION),
      error: ACCELERATION,
    },
  ]
}

function velocityGains({ kp, ki }: Scenario['strategies']['sensedForce']['velocity']): Row[] {
  return [
    {
      path: `${IN_SPEED}.kp`,
      label: 'Velocity, proportional',
      value: kp,
      unit: 'A·s/m',
      powers: gainOf(CURRENT, SPEED),
      error: SPEED,
    },
    {
      path: `${IN_SPEED}.ki`,
      label: 'Velocity, integral',
      value: ki,
      unit: 'A/m',
      powers: gainOf(CURRENT, SPEED, EACH_SAMPLE),
      error: SPEED,
    },
  ]
}

function forceGains({ kp, ki, kd }: Scenario['strategies']['sensedForce']): Row[] {
  return [
    {
      path: `${IN_FORCE}.kp`,
      label: 'Force, proportional',
      value: kp,
      unit: 'm/(N·s)',
      powers: gainOf(SPEED, FORCE),
      error: FORCE,
    },
    {
      path: `${IN_FORCE}.ki`,
      label: 'Force, integral',
      value: ki,
      unit: 'm/(N·s²)',
      powers: gainOf(SPEED, FORCE, { forceSamplePeriod: 1 }),
      error: FORCE,
    },
    {
      path: `${IN_FORCE}.kd`,
      label: 'Force, derivative',
      value: kd,
      unit: 'm/N',
      powers: gainOf(SPEED, FORCE, { forceSamplePeriod: -1 }),
      error: FORCE,
    },
  ]
}
