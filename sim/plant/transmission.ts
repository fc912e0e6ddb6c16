/** Spring and damper with free play between motor side and jaw; the film in the play damps as the flanks do. */
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
    const stretch = lead > this.play ? lead - this.play : lead < -this.play ? lead + this.play : 0
    return this.stiffness * stretch + this.damping * rate
  }
}
