/** Spring and damper with free play between motor side and jaw. */
export class Transmission {
  private readonly stiffness: number
  private readonly damping: number
  private readonly play: number

  /** Stiffness [N/m], damping [N·s/m], backlash [m] from one flank to the other. */
  constructor(stiffness: number, damping: number, backlash: number) {
    this.stiffness = stiffness
    this.damping = damping
    this.play = backlash / 2
  }

  /** Force on the jaw [N] for the motor side leading by `lead` [m] and `rate` [m/s]. */
  force(lead: number, rate: number): number {
    if (this.play === 0) return this.stiffness * lead + this.damping * rate
    if (lead > this.play) {
      const force = this.stiffness * (lead - this.play) + this.damping * rate
      return force > 0 ? force : 0 // a flank cannot pull
    }
    if (lead < -this.play) {
      const force = this.stiffness * (lead + this.play) + this.damping * rate
      return force < 0 ? force : 0
    }
    return 0
  }
}
