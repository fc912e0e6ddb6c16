// What page, worker and Node all offer though it is no part of the language: sim/ may use this and nothing else.
declare function structuredClone<T>(value: T): T
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean })
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string
}
