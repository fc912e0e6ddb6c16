/** The compiled core's half of `native.ts`. */
export type Numbers = StaticArray<f64>

export function numbers(length: i32): Numbers {
  return new StaticArray<f64>(length)
}

// @ts-expect-error: decorator
@inline
export function product(a: i32, b: i32): i32 {
  return a * b
}

// @ts-expect-error: decorator
@inline
export function unsigned(value: i32): f64 {
  return <f64>(<u32>value)
}

function canonical(value: f64): u64 {
  return value == value ? reinterpret<u64>(value) : 0x7ff8000000000000
}

export function lowWord(value: f64): i32 {
  return <i32>canonical(value)
}

export function highWord(value: f64): i32 {
  return <i32>(canonical(value) >> 32)
}

// @ts-expect-error: decorator
@inline
export function item(array: Numbers, index: i32): f64 {
  return unchecked(array[index])
}

// @ts-expect-error: decorator
@inline
export function put(array: Numbers, index: i32, value: f64): void {
  unchecked((array[index] = value))
}

/** 1.5·2^52: added to a whole number it leaves that number in the lower half of the sum's bits. */
const SHIFT: f64 = 6755399441055744

// @ts-expect-error: decorator
@inline
export function whole(value: f64): i32 {
  return <i32>reinterpret<i64>(value + SHIFT)
}

// @ts-expect-error: decorator
@inline
export function larger(most: f64, value: f64): f64 {
  return f64x2.extract_lane(f64x2.pmax(f64x2.splat(most), f64x2.splat(value)), 0)
}

/** Two channels at a time. */
export function widen(
  values: Numbers,
  rows: i32,
  low: Numbers,
  high: Numbers,
  rising: Numbers,
  width: i32,
  anew: bool,
): void {
  const one = f64x2.splat(1)
  const end: usize = (<usize>width) << 3
  const stride: usize = (<usize>(width + (width & 1))) << 3
  const first: usize = changetype<usize>(values)
  const last: usize = first + stride * <usize>rows
  for (let at: usize = 0; at < end; at += 16) {
    let lowest = v128.load(changetype<usize>(low) + at)
    let highest = v128.load(changetype<usize>(high) + at)
    let rose = v128.load(changetype<usize>(rising) + at)
    let from: usize = first + at
    if (anew) {
      lowest = v128.load(from)
      highest = lowest
      rose = one
      from += stride
    }
    for (; from < last + at; from += stride) {
      const value = v128.load(from)
      const above = f64x2.gt(value, highest)
      const below = f64x2.lt(value, lowest)
      highest = f64x2.pmax(highest, value)
      lowest = f64x2.pmin(lowest, value)
      rose = v128.or(v128.andnot(rose, below), v128.and(above, one))
    }
    v128.store(changetype<usize>(low) + at, lowest)
    v128.store(changetype<usize>(high) + at, highest)
    v128.store(changetype<usize>(rising) + at, rose)
  }
}

export function forget(): void {
  heap.reset()
}
