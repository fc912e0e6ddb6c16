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

export function forget(): void {
  heap.reset()
}
