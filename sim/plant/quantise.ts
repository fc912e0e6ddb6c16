/** Rounds to the nearest step of an encoder or converter; a step of 0 leaves the value. */
export const quantise = (value: number, step: number) => (step > 0 ? Math.floor(value / step + 0.5) * step : value)
