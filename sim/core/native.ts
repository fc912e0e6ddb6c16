/** The few operations that TypeScript and the compiled core write differently; `native.wasm.ts` has the other half. */
export type Numbers = Float64Array

export const numbers = (length: i32): Numbers => new Float64Array(length)

/** Product of two 32-bit integers, and one read as unsigned. */
export const product = (a: i32, b: i32): i32 => Math.imul(a, b)
export const unsigned = (value: i32): f64 => value >>> 0

const bits = new Float64Array(1)
const words = new Int32Array(bits.buffer)

/** The two halves of a number's 64 bits; all that are not a number count as one. */
export function lowWord(value: f64): i32 {
  bits[0] = Number.isNaN(value) ? NaN : value
  return words[0]!
}

export function highWord(value: f64): i32 {
  bits[0] = Number.isNaN(value) ? NaN : value
  return words[1]!
}

/** Reads and writes an element of an array that is known to be long enough. */
export const item = (array: Numbers, index: i32): f64 => array[index]!
export function put(array: Numbers, index: i32, value: f64): void {
  array[index] = value
}

/** A number that is known to be whole and to fit in 32 bits. */
export const whole = (value: f64): i32 => value

/** The larger of two numbers, and `most` where one of them is none. */
export const larger = (most: f64, value: f64): f64 => (value > most ? value : most)

/**
 * Takes rows of values into extremes, a channel each, or begins them anew: `rising` is 1 where the highest has come after the lowest, else
 * 0. Rows and arrays have room for an even number of channels.
 */
export function widen(
  values: Numbers,
  rows: i32,
  low: Numbers,
  high: Numbers,
  rising: Numbers,
  width: i32,
  anew: bool,
): void {
  const room: i32 = width + (width & 1)
  for (let c: i32 = 0; c < width; c++) {
    let lowest: f64 = anew ? item(values, c) : item(low, c)
    let highest: f64 = anew ? item(values, c) : item(high, c)
    let rose: f64 = anew ? 1 : item(rising, c)
    for (let row: i32 = anew ? 1 : 0; row < rows; row++) {
      const value: f64 = item(values, row * room + c)
      if (value > highest) {
        highest = value
        rose = 1
      } else if (value < lowest) {
        lowest = value
        rose = 0
      }
    }
    put(low, c, lowest)
    put(high, c, highest)
    put(rising, c, rose)
  }
}

/** Forgets all blocks made so far, so that memory can be used again. */
export function forget(): void {}
