/**
 * Two thermal nodes, winding and housing. Copper: R(T) = R25·(1 + 0.00393·(T − 25)) (IEC 60028 annealed copper, coefficient
 * at 20 °C used from 25 °C on); the magnets sit at housing temperature and lose flux with it.
 */
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
const REFERENCE = 25

export class Heat {
  winding: number
  housing: number
  /** Factors on the winding resistance and on the force constant. */
  resistance = 1
  flux = 1
  private readonly options: HeatOptions
  private readonly windingCapacity: number
  private readonly housingCapacity: number

  constructor(options: HeatOptions) {
    this.options = options
    this.winding = options.ambient
    this.housing = options.ambient
    this.windingCapacity = options.windingTime / options.windingResistance
    this.housingCapacity = options.housingTime / options.housingResistance
    this.update()
  }

  /** `loss` is the copper loss [W] over `time` [s]. */
  step(loss: number, time: number): void {
    const inner = (this.winding - this.housing) / this.options.windingResistance
    const outer = (this.housing - this.options.ambient) / this.options.housingResistance
    this.winding += (time * (loss - inner)) / this.windingCapacity
    this.housing += (time * (inner - outer)) / this.housingCapacity
    this.update()
  }

  private update(): void {
    this.resistance = 1 + COPPER_COEFFICIENT * (this.winding - REFERENCE)
    this.flux = 1 + this.options.magnetCoefficient * (this.housing - REFERENCE)
  }
}
