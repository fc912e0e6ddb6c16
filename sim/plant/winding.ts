/**
 * Winding: L di/dt = v − R i − K·speed, solved implicitly, so that any L/R is stable. Seen from the jaw: speed in m/s,
 * K in V·s/m.
 */
export class Winding {
  current = 0
  private readonly gain: number

  constructor(inductance: number, step: number) {
    this.gain = step / inductance
  }

  /** Carries another one's current. */
  take(previous: Winding): void {
    this.current = previous.current
  }

  step(voltage: number, backEmf: number, resistance: number): number {
    this.current = (this.current + this.gain * (voltage - backEmf)) / (1 + this.gain * resistance)
    return this.current
  }
}
