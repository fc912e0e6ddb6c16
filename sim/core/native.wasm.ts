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

/** Two channels at a time. */
export function widen(now: Numbers, low: Numbers, high: Numbers, rising: Numbers, width: i32): void {
  const one = f64x2.splat(1)
  const end: usize = (<usize>width) << 3
  for (let at: usize = 0; at < end; at += 16) {
    const value = v128.load(changetype<usize>(now) + at)
    const lowest = v128.load(changetype<usize>(low) + at)
    const highest = v128.load(changetype<usize>(high) + at)
    const above = f64x2.gt(value, highest)
    const below = f64x2.lt(value, lowest)
    const rises = v128.andnot(v128.load(changetype<usize>(rising) + at), below)
    v128.store(changetype<usize>(high) + at, v128.bitselect(value, highest, above))
    v128.store(changetype<usize>(low) + at, v128.bitselect(value, lowest, below))
    v128.store(changetype<usize>(rising) + at, v128.bitselect(one, rises, above))
  }
}

export function forget(): void {
  heap.reset()
}
