/**
 * Two thermal nodes, winding and housing. Copper: R(T) = R25·(1 + 0.00393·(T − 25)) (IEC 60028 annealed copper, coefficient
 * at 20 °C used from 25 °C on); the magnets sit at housing temperature and lose flux with it.
 */
import { exponential } from './elementary.ts'

export interface HeatOptions {
  /** [K/W], [s], [K/W], [s], [°C], [1/K] */
  windingResistance: number
  windingTime: number
  housingResistance: number
  housingTime: number
  ambient: number
  magnetCoefficient: number
}

export const COPPER_COEFFICIENT = 0.00393
export const REFERENCE = 25

/** Temperatures of the two nodes [°C]. */
export interface Temperatures {
  winding: number
  housing: number
}

export class Heat {
  winding: number
  housing: number
  /** Factors on the winding resistance and on the force constant. */
  resistance = 1
  flux = 1
  private readonly options: HeatOptions
  private readonly windingCapacity: number
  private readonly housingCapacity: number

  constructor(options: HeatOptions, start: Temperatures = { winding: options.ambient, housing: options.ambient }) {
    this.options = options
    this.winding = start.winding
    this.housing = start.housing
    this.windingCapacity = options.windingTime / options.windingResistance
    this.housingCapacity = options.housingTime / options.housingResistance
    this.update()
  }

  /** As warm as another one. */
  take(previous: Temperatures): void {
    this.winding = previous.winding
    this.housing = previous.housing
    this.update()
  }

  /** `loss` is the copper loss [W] over `time` [s]. Implicit Euler, so that any pair of time constants is stable. */
  step(loss: number, time: number): void {
    const { windingResistance, housingResistance, ambient } = this.options
    const inner = 1 / windingResistance
    const outer = 1 / housingResistance
    const w = time / this.windingCapacity
    const h = time / this.housingCapacity
    const winding = this.winding + w * loss
    const housing = this.housing + h * outer * ambient
    const own = 1 + w * inner
    const other = 1 + h * (inner + outer)
    const coupling = w * h * inner * inner
    this.winding = (other * winding + w * inner * housing) / (own * other - coupling)
    this.housing = (h * inner * winding + own * housing) / (own * other - coupling)
    this.update()
  }

  private update(): void {
    this.resistance = 1 + COPPER_COEFFICIENT * (this.winding - REFERENCE)
    const flux = 1 + this.options.magnetCoefficient * (this.housing - REFERENCE)
    this.flux = flux > 0 ? flux : 0
  }
}

/** Exact free cooling of the two nodes for `time` [s]. */
export function cooled(options: HeatOptions, from: Temperatures, time: number): Temperatures {
  const { e11, e12, e21, e22 } = transition(options, time)
  const w = from.winding - options.ambient
  const h = from.housing - options.ambient
  return { winding: options.ambient + e11 * w + e12 * h, housing: options.ambient + e21 * w + e22 * h }
}

/**
 * Start of the cycle in the steady state of a duty: the two nodes are linear in their temperatures, so one cycle of `time` [s]
 * that led from `start` to `end` tells the start to which it would return: start + (I − E)⁻¹(end − start).
 */
export function steadyStart(options: HeatOptions, start: Temperatures, end: Temperatures, time: number): Temperatures {
  const { e11, e12, e21, e22 } = transition(options, time)
  const a = 1 - e11
  const d = 1 - e22
  const det = a * d - e12 * e21
  const w = end.winding - start.winding
  const h = end.housing - start.housing
  return { winding: start.winding + (d * w + e12 * h) / det, housing: start.housing + (a * h + e21 * w) / det }
}

/** exp(M·time) of the two nodes, from the eigenvalues of M (both real and negative). */
function transition(options: HeatOptions, time: number) {
  const a = 1 / options.windingTime
  const c = 1 / options.housingTime
  const b = (a * options.windingTime * c * options.housingResistance) / options.windingResistance
  const sum = a + b + c
  const root = Math.sqrt(sum * sum - 4 * a * c)
  const slow = (-2 * a * c) / (sum + root)
  const fast = (-sum - root) / 2
  const es = exponential(slow * time)
  const ef = exponential(fast * time)
  const entry = (m: number, own: number) => (es * (m - fast * own) - ef * (m - slow * own)) / (slow - fast)
  return { e11: entry(-a, 1), e12: entry(a, 0), e21: entry(b, 0), e22: entry(-b - c, 1) }
}
