/** Gains, limits and thresholds in a drive's own integers, from the scale factors that its manual gives. */
import { jobOf } from '../../job/index.ts'
import { readPath, type Scenario } from '../../scenario/index.ts'
import { quantityAt } from '../../scenario/quantity-at.ts'
import { strategiesOn } from '../../strategy/index.ts'
import type { DriveQuantity, SheetRow } from '../../strategy/strategy.ts'

export interface DriveScales {
  /** Encoder counts for each metre, or radian, of the output. */
  countsPerMetre: number
  /** One unit of the drive's current command [A]. */
  amperesPerUnit: number
  /** One unit of the gauge's converter [N or N·m]. */
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

/** Of speed and acceleration counts a sample, and their change from one to the next. */
const QUANTITIES: Record<DriveQuantity, Powers> = {
  current: { amperesPerUnit: -1 },
  length: { countsPerMetre: 1 },
  speed: { countsPerMetre: 1, samplePeriod: 1 },
  acceleration: { countsPerMetre: 1, samplePeriod: 2 },
  force: { newtonsPerUnit: -1 },
  time: { samplePeriod: -1 },
  share: { shift: 1 },
}

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

function rowsOf(scenario: Scenario): Row[] {
  const rows = [...SERVO, ...strategiesOn(jobOf(scenario)).flatMap(({ sheet }) => sheet)]
  return rows.map(({ path, label, unit: usual, gives, error, over }) => {
    const value = readPath(scenario, path) as number
    // Where the output turns, or a tension is wanted, the format has its own units.
    const unit = quantityAt(scenario, path)?.unit ?? usual
    if (error === undefined) return { path, label, value, unit, powers: QUANTITIES[gives] }
    const period: Powers = over ? { [over.loop === 'servo' ? 'samplePeriod' : 'forceSamplePeriod']: over.power } : {}
    const powers = gainOf(QUANTITIES[gives], QUANTITIES[error], period)
    return { path, label, value, unit, powers, error: QUANTITIES[error] }
  })
}

/** What all strategies share. */
const SERVO: SheetRow[] = [
  { path: 'servo.kp', label: 'Position, proportional', unit: 'A/m', gives: 'current', error: 'length' },
  {
    path: 'servo.ki',
    label: 'Position, integral',
    unit: 'A/(m·s)',
    gives: 'current',
    error: 'length',
    over: { loop: 'servo', power: 1 },
  },
  { path: 'servo.kd', label: 'Position, derivative', unit: 'A·s/m', gives: 'current', error: 'speed' },
  { path: 'servo.velocityFeedforward', label: 'Speed feed-forward', unit: 'A·s/m', gives: 'current', error: 'speed' },
  {
    path: 'servo.accelerationFeedforward',
    label: 'Acceleration feed-forward',
    unit: 'A·s²/m',
    gives: 'current',
    error: 'acceleration',
  },
  { path: 'servo.setpointWeights.proportional', label: 'Set-point weight, proportional', unit: '', gives: 'share' },
  { path: 'servo.setpointWeights.derivative', label: 'Set-point weight, derivative', unit: '', gives: 'share' },
  { path: 'servo.currentLimit', label: 'Current limit', unit: 'A', gives: 'current' },
  { path: 'servo.speedFilter', label: 'Speed filter, samples', unit: 's', gives: 'time' },
  { path: 'approach.speed', label: 'Approach speed', unit: 'm/s', gives: 'speed' },
  { path: 'approach.acceleration', label: 'Acceleration', unit: 'm/s²', gives: 'acceleration' },
  { path: 'approach.creepSpeed', label: 'Creep speed', unit: 'm/s', gives: 'speed' },
]
