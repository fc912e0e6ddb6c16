/** Step motor without an encoder: the field carries a fixed current, and the strategy's target alone turns it. */
export class FieldLoop {
  /** A */
  limit: number
  readonly saturated = 0
  readonly measuredSpeed = 0

  constructor(limit: number) {
    this.limit = limit
  }

  /** Whatever is wanted and measured; returns the current of the field, A. */
  tick(..._ignored: number[]): number {
    return this.limit
  }
}
