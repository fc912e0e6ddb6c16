/**
 * Two thermal nodes, winding and housing. Copper: R(T) = R25·(1 + 0.00393·(T − 25)) (IEC 60028 annealed copper, coefficient
 * at 20 °C used from 25 °C on); the magnets sit at housing temperature and lose flux with it.
 */
import { Block, State } from '../core/block.ts'

export const COPPER_COEFFICIENT: f64 = 0.00393
export const REFERENCE: f64 = 25

export class HeatState extends State {
  /** [°C] */
  winding: f64 = 25
  housing: f64 = 25
}

export class Heat extends Block {
  /** [K/W], [K/W], [J/K], [J/K], [°C], [1/K] */
  windingResistance: f64 = 1
  housingResistance: f64 = 1
  windingCapacity: f64 = 1
  housingCapacity: f64 = 1
  ambient: f64 = 25
  magnetCoefficient: f64 = 0
  /** Factors on the winding resistance and on the force constant, as `settle` leaves them. */
  resistance: f64 = 1
  flux: f64 = 1
  readonly state: HeatState = new HeatState()

  /** `loss` is the copper loss [W] over `time` [s]. Implicit Euler, so that any pair of time constants is stable. */
  step(loss: f64, time: f64): void {
    const s = this.state
    const inner: f64 = 1 / this.windingResistance
    const outer: f64 = 1 / this.housingResistance
    const w: f64 = time / this.windingCapacity
    const h: f64 = time / this.housingCapacity
    const winding: f64 = s.winding + w * loss
    const housing: f64 = s.housing + h * outer * this.ambient
    const own: f64 = 1 + w * inner
    const other: f64 = 1 + h * (inner + outer)
    const coupling: f64 = w * h * inner * inner
    s.winding = (other * winding + w * inner * housing) / (own * other - coupling)
    s.housing = (h * inner * winding + own * housing) / (own * other - coupling)
    this.settle()
  }

  /** Factors at the present temperatures. */
  settle(): void {
    this.resistance = 1 + COPPER_COEFFICIENT * (this.state.winding - REFERENCE)
    const flux: f64 = 1 + this.magnetCoefficient * (this.state.housing - REFERENCE)
    this.flux = flux > 0 ? flux : 0
  }
}
