/** End stops of the jaw's travel, one-sided springs with a damper that cannot pull. */

/** A stop is about as stiff as the axis that runs against it, up to this [N/m]; common practice, no source. */
export const STIFFEST_STOP = 5e6
export const stopStiffness = (transmissionStiffness: number) => Math.min(transmissionStiffness, STIFFEST_STOP)

export class EndStops {
  private readonly stroke: number
  private readonly stiffness: number
  private readonly damping: number

  /** Stroke [m], stiffness [N/m], mass that strikes [kg]; damping ratio one half. */
  constructor(stroke: number, stiffness: number, mass: number) {
    this.stroke = stroke
    this.stiffness = stiffness
    this.damping = Math.sqrt(stiffness * mass)
  }

  /** Force on the jaw [N], closing positive. */
  force(travel: number, speed: number): number {
    return travel >= 0 && travel <= this.stroke ? 0 : this.push(travel, speed)
  }

  private push(travel: number, speed: number): number {
    if (travel < 0) {
      const force = -this.stiffness * travel - this.damping * speed
      return force > 0 ? force : 0
    }
    const force = -this.stiffness * (travel - this.stroke) - this.damping * speed
    return force < 0 ? force : 0
  }
}
