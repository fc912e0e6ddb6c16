/**
 * Bytes to text, piece by piece. The encoding is told by a byte-order mark, else by where the zeros stand (UTF-16), else each piece of
 * whole lines is read as UTF-8 and, where it is none, as windows-1252, in which every byte means something: decoding never fails.
 */

/** First bytes of files that are no text, whatever their name says (each from its format's specification). */
const SIGNATURES: [is: string, bytes: string][] = [
  ['a picture', '\x89PNG'],
  ['a picture', '\xff\xd8\xff'],
  ['a picture', 'GIF8'],
  ['a picture', 'BM'],
  ['a picture', 'II*\0'],
  ['a picture', 'MM\0*'],
  ['a picture', 'RIFF'],
  ['a spreadsheet or another archive', 'PK\x03\x04'],
  ['a spreadsheet of an old kind', '\xd0\xcf\x11\xe0'],
  ['a document', '%PDF'],
  ['a compressed file', '\x1f\x8b'],
  ['a compressed file', 'BZh'],
  ['a compressed file', '7z\xbc\xaf'],
  ['a compressed file', '\xfd7zXZ'],
  ['a compressed file', '\x28\xb5\x2f\xfd'],
  ['a table in binary form', '\x89HDF'],
  ['a table in binary form', 'TDSm'],
  ['a table in binary form', 'MATLAB 5.0'],
  ['a table in binary form', 'PAR1'],
]

/** Bytes that are looked at for what the file is. */
const LOOK = 4096
/** Bytes of a line beyond which this is no table. */
const LONGEST_LINE = 1 << 20

type Encoding = 'UTF-8' | 'windows-1252' | 'UTF-16LE' | 'UTF-16BE'

export class Decoder {
  encoding: Encoding = 'UTF-8'
  /** What the file is if it is no text; '' for text. */
  foreign = ''
  /** A line that never ends. */
  endless = false
  private begun = false
  private rest: Uint8Array = new Uint8Array(0)
  private wide: TextDecoder | null = null

  /** The text of the whole lines so far; the rest is kept. Empty while there are too few bytes to tell what they are. */
  push(bytes: Uint8Array): string {
    const all = joined(this.rest, bytes)
    if (!this.begun && all.length < LOOK) {
      this.rest = all
      return ''
    }
    return this.take(all, false)
  }

  /** What is left once no more bytes come. */
  end(): string {
    return this.take(this.rest, true)
  }

  private take(all: Uint8Array, last: boolean): string {
    const from = this.begun ? 0 : this.begin(all)
    if (this.foreign !== '') return ''
    if (this.wide) {
      this.rest = new Uint8Array(0)
      return this.wide.decode(all.subarray(from), { stream: !last })
    }
    const to = last ? all.length : endOfLines(all)
    this.rest = all.slice(Math.max(to, from))
    this.endless = this.rest.length > LONGEST_LINE
    return to > from ? this.narrow(all.subarray(from, to), last) : ''
  }

  /** Tells the encoding; how many bytes the mark of it takes. */
  private begin(all: Uint8Array): number {
    this.begun = true
    const [mark, encoding] = markOf(all)
    this.encoding = encoding
    this.foreign = encoding.startsWith('UTF-16') ? '' : foreignOf(all)
    if (encoding.startsWith('UTF-16')) this.wide = new TextDecoder(encoding.toLowerCase())
    return mark
  }

  private narrow(bytes: Uint8Array, last: boolean): string {
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    } catch {
      // A file that was cut within a character is none of another encoding.
      if (!last || endOfLines(bytes) > 0) this.encoding = 'windows-1252'
      return new TextDecoder('windows-1252').decode(bytes)
    }
  }
}

function markOf(all: Uint8Array): [length: number, encoding: Encoding] {
  if (all[0] === 0xef && all[1] === 0xbb && all[2] === 0xbf) return [3, 'UTF-8']
  if (all[0] === 0xff && all[1] === 0xfe) return [2, 'UTF-16LE']
  if (all[0] === 0xfe && all[1] === 0xff) return [2, 'UTF-16BE']
  const zeros = [0, 0]
  const look = Math.min(all.length, LOOK)
  for (let i = 0; i < look; i++) if (all[i] === 0) zeros[i % 2]! += 1
  // Text of a table is nearly all Latin: of each of its pairs of bytes the upper one is zero.
  if (zeros[1]! > 0.4 * look) return [0, zeros[0]! === 0 ? 'UTF-16LE' : 'UTF-8']
  return [0, zeros[0]! > 0.4 * look && zeros[1]! === 0 ? 'UTF-16BE' : 'UTF-8']
}

function foreignOf(all: Uint8Array): string {
  const start = String.fromCharCode(...all.subarray(0, 12))
  const known = SIGNATURES.find(([, bytes]) => start.startsWith(bytes))
  // Two letters are little evidence: a text may begin with them.
  if (known && (known[1].length > 2 || controls(all) > 0)) return known[0]
  return controls(all) > 0.02 * Math.min(all.length, LOOK) ? 'binary data' : ''
}

/** How many of the first bytes no text holds: zeros and controls but tab, line ends, form feed and end of file. */
function controls(all: Uint8Array): number {
  let count = 0
  for (const byte of all.subarray(0, LOOK)) if (byte < 32 && !(byte >= 9 && byte <= 13) && byte !== 26) count++
  return count
}

/** Behind the last line end. A CR at the very end may still get its LF. */
function endOfLines(all: Uint8Array): number {
  const feed = all.lastIndexOf(10)
  return 1 + (feed >= 0 ? feed : all.lastIndexOf(13, all.length - 2))
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b
  const both = new Uint8Array(a.length + b.length)
  both.set(a)
  both.set(b, a.length)
  return both
}
