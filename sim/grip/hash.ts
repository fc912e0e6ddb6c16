/** Fingerprint of the traces, equal only where two runs agree to the last bit: FNV-1a over 32-bit words, two lanes. */
import { CHANNELS, type Traces } from './result.ts'

const PRIME = 16777619

export function tracesHash(traces: Traces): string {
  let low = 0x811c9dc5
  let high = 0x01000193
  for (const { id } of CHANNELS) {
    const column = traces[id]
    const words = new Uint32Array(column.buffer, column.byteOffset, 2 * column.length)
    for (let n = 0; n < words.length; n += 2) {
      low = Math.imul(low ^ words[n]!, PRIME)
      high = Math.imul(high ^ words[n + 1]!, PRIME) ^ (low >>> 15)
    }
  }
  const hex = (word: number) => (word >>> 0).toString(16).padStart(8, '0')
  return hex(high) + hex(low)
}
