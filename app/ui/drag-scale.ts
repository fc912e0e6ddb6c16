/** The scale beneath a number field: where a value lies on it and which value lies at a place, both in the shown unit. */
import { decade } from './number.ts'

export interface DragScale {
  /** Place of a value, 0 at the left end to 1 at the right. */
  place(value: number): number
  /** Value at a place. */
  at(place: number): number
}

/** Share of a logarithmic scale kept for zero where zero is allowed. */
const ZERO_NOTCH = 0.06

/**
 * A range of three decades or more is logarithmic, one decade either side of `base`; a smaller one is linear over all of it.
 * Either grows so that `value` is on it, and neither leaves the allowed range.
 */
export function dragScale(value: number, base: number, min: number, max: number): DragScale {
  const wide = max / Math.max(Math.abs(min), Number.MIN_VALUE) >= 1000
  if (min >= 0 && wide && base > 0) return logarithmic(value, base, min, max)
  if (!wide && max / Math.max(Math.abs(base), Number.MIN_VALUE) < 1000) return linear(min, max)
  const reach = 2 * Math.max(Math.abs(value), Math.abs(base)) || (max > 2 ? max / 1000 : max)
  return linear(Math.max(min, min < 0 ? -reach : 0), Math.min(max, reach))
}

function linear(from: number, to: number): DragScale {
  return {
    place: (value) => clamp((value - from) / (to - from), 0, 1),
    at: (place) => from + (to - from) * clamp(place, 0, 1),
  }
}

function logarithmic(value: number, base: number, min: number, max: number): DragScale {
  const low = Math.max(min, value > 0 && value < base / 10 ? 10 ** decade(value) : base / 10)
  const high = Math.min(max, value > base * 10 ? 10 ** (decade(value) + 1) : base * 10)
  const notch = min === 0 ? ZERO_NOTCH : 0
  const span = Math.log(high / low)
  return {
    place: (v) => (v <= 0 ? 0 : notch + (1 - notch) * clamp(Math.log(v / low) / span, 0, 1)),
    at: (place) => {
      if (place < notch / 2) return 0
      return low * Math.exp(span * clamp((place - notch) / (1 - notch), 0, 1))
    },
  }
}

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value))
