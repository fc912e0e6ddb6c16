// What page, worker and Node all offer though it is no part of the language: sim/ may use this and nothing else.
declare function structuredClone<T>(value: T): T
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean })
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string
}

declare module 'fft.js' {
  /** Of a power of two; complex arrays hold real and imaginary parts in turn. */
  export default class FFT {
    constructor(size: number)
    createComplexArray(): number[]
    realTransform(out: number[], data: ArrayLike<number>): void
  }
}
