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
  /** The step [s] for which the rest of these hold; 0: none. What it heats the winding [K/W]; shares of a difference that it evens out. */
  private time: f64 = 0
  private perLoss: f64 = 0
  private windingShare: f64 = 0
  private housingShare: f64 = 0
  private ambientShare: f64 = 0
  /** By how much each node follows what is put into it and into the other. */
  private windingOwn: f64 = 1
  private windingOther: f64 = 0
  private housingOwn: f64 = 1
  private housingOther: f64 = 0

  /** `loss` is the copper loss [W] over `time` [s]. Implicit Euler, so that any pair of time constants is stable. */
  step(loss: f64, time: f64): void {
    if (time !== this.time) this.setStep(time)
    const s = this.state
    const over: f64 = s.winding - s.housing
    const winding: f64 = this.perLoss * loss - this.windingShare * over
    const housing: f64 = this.housingShare * over - this.ambientShare * (s.housing - this.ambient)
    s.winding += this.windingOwn * winding + this.windingOther * housing
    s.housing += this.housingOther * winding + this.housingOwn * housing
    this.factors()
  }

  /** After a change of constants or of state from outside. */
  settle(): void {
    this.time = 0
    this.factors()
  }

  private setStep(time: f64): void {
    const inner: f64 = 1 / this.windingResistance
    const outer: f64 = 1 / this.housingResistance
    const w: f64 = time / this.windingCapacity
    const h: f64 = time / this.housingCapacity
    const own: f64 = 1 + w * inner
    const other: f64 = 1 + h * (inner + outer)
    const all: f64 = own * other - w * h * inner * inner
    this.time = time
    this.perLoss = w
    this.windingShare = w * inner
    this.housingShare = h * inner
    this.ambientShare = h * outer
    this.windingOwn = other / all
    this.windingOther = (w * inner) / all
    this.housingOwn = own / all
    this.housingOther = (h * inner) / all
  }

  /** Factors at the present temperatures. */
  private factors(): void {
    this.resistance = 1 + COPPER_COEFFICIENT * (this.state.winding - REFERENCE)
    const flux: f64 = 1 + this.magnetCoefficient * (this.state.housing - REFERENCE)
    this.flux = flux > 0 ? flux : 0
  }
}
