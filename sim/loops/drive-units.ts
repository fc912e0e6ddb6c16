/** Gains, limits and thresholds in a drive's own integers, from the scale factors that its manual gives. */
import type { Scenario } from '../scenario/index.ts'

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

export interface DriveSetting {
  path: string
  label: string
  /** Value of the scenario, in SI. */
  value: number
  unit: string
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
  /** Drive units for each SI unit of the value. */
  scale: number
  /** For a gain: drive units for each SI unit of the error that it multiplies. */
  error?: number
}

/**
 * The drive computes, each sample, (Kp·e + Ki·Σe + Kd·Δe) >> shift with e in counts (position), counts a sample (speed) or gauge
 * units (force), and gives current units, or for the force loop counts a sample. Throws a RangeError for a scale that is not
 * above 0 or a shift outside 0 … 31.
 */
export function driveSettings(scenario: Scenario, scales: DriveScales): DriveSetting[] {
  for (const [name, value] of Object.entries(scales)) {
    if (
      name === 'shift'
        ? !(Number.isInteger(value) && value >= 0 && value <= 31)
        : !(value > 0 && Number.isFinite(value))
    )
      throw new RangeError(
        `${name}: given ${value}, allowed ${name === 'shift' ? 'a whole number from 0 to 31' : 'above 0'}`,
      )
  }
  const most = 2 ** (scales.wordBits - 1) - 1
  return rowsOf(scenario, scales).map(({ path, label, value, unit, scale, error }) => {
    const integer = Math.round(value * scale)
    const means = integer / scale
    return {
      path,
      label,
      value,
      unit,
      integer,
      means,
      error: value === 0 ? null : means / value - 1,
      overflow: Math.abs(integer) > most,
      lost: value !== 0 && integer === 0,
      largestError:
        error === undefined || integer === 0 ? null : 2 ** (2 * scales.wordBits - 1) / Math.abs(integer) / error,
    }
  })
}

function rowsOf({ servo, approach, strategies }: Scenario, s: DriveScales): Row[] {
  const { thresholdStop, currentClamp, sensedForce } = strategies
  const { velocity } = sensedForce
  const shifted = 2 ** s.shift
  const current = 1 / s.amperesPerUnit
  const length = s.countsPerMetre
  const period = s.samplePeriod
  const force = 1 / s.newtonsPerUnit
  const slow = s.forceSamplePeriod
  const speed = length * period
  const gain = (path: string, label: string, value: number, unit: string, scale: number, error: number): Row => ({
    path,
    label,
    value,
    unit,
    scale: scale * shifted,
    error,
  })
  const plain = (path: string, label: string, value: number, unit: string, scale: number): Row => ({
    path,
    label,
    value,
    unit,
    scale,
  })
  const inSpeed = 'strategies.sensedForce.velocity'
  const inForce = 'strategies.sensedForce'
  return [
    gain('servo.kp', 'Position, proportional', servo.kp, 'A/m', current / length, length),
    gain('servo.ki', 'Position, integral', servo.ki, 'A/(m·s)', (current / length) * period, length),
    gain('servo.kd', 'Position, derivative', servo.kd, 'A·s/m', current / speed, speed),
    gain('servo.velocityFeedforward', 'Speed feed-forward', servo.velocityFeedforward, 'A·s/m', current / speed, speed),
    gain(
      'servo.accelerationFeedforward',
      'Acceleration feed-forward',
      servo.accelerationFeedforward,
      'A·s²/m',
      current / (speed * period),
      speed * period,
    ),
    plain('servo.currentLimit', 'Current limit', servo.currentLimit, 'A', current),
    plain('servo.speedFilter', 'Speed filter, samples', servo.speedFilter, 's', 1 / period),
    plain('approach.speed', 'Approach speed', approach.speed, 'm/s', speed),
    plain('approach.acceleration', 'Acceleration', approach.acceleration, 'm/s²', speed * period),
    plain('approach.creepSpeed', 'Creep speed', approach.creepSpeed, 'm/s', speed),
    plain('strategies.thresholdStop.threshold', 'Threshold', thresholdStop.threshold, 'A', current),
    plain('strategies.thresholdStop.confirmTime', 'Confirm time, samples', thresholdStop.confirmTime, 's', 1 / period),
    plain('strategies.currentClamp.limit', 'Clamp current', currentClamp.limit, 'A', current),
    gain(`${inSpeed}.kp`, 'Velocity, proportional', velocity.kp, 'A·s/m', current / speed, speed),
    gain(`${inSpeed}.ki`, 'Velocity, integral', velocity.ki, 'A/m', (current / speed) * period, speed),
    plain(`${inForce}.target`, 'Target force', sensedForce.target, 'N', force),
    plain(`${inForce}.contactForce`, 'Contact force', sensedForce.contactForce, 'N', force),
    gain(`${inForce}.kp`, 'Force, proportional', sensedForce.kp, 'm/(N·s)', speed / force, force),
    gain(`${inForce}.ki`, 'Force, integral', sensedForce.ki, 'm/(N·s²)', (speed / force) * slow, force),
    gain(`${inForce}.kd`, 'Force, derivative', sensedForce.kd, 'm/N', speed / force / slow, force),
    plain(`${inForce}.deadband`, 'Dead band', sensedForce.deadband, 'm/s', speed),
    plain(`${inForce}.speedLimit`, 'Speed limit', sensedForce.speedLimit, 'm/s', speed),
  ]
}
