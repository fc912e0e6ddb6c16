/** Text to records: a line each, or several where a quoted field holds line ends. */

export interface Rec {
  text: string
  /** Number of its first line, from 1. */
  line: number
  /** Whether its line was ended. */
  ended: boolean
}

/** Lines and letters that a quoted field may span; beyond, its opening quote was a stray one. */
const MOST_LINES = 50
const MOST_LETTERS = 20_000

export class Records {
  private readonly emit: (record: Rec) => void
  private line = 0
  private tail = ''
  private open: Rec[] = []

  constructor(emit: (record: Rec) => void) {
    this.emit = emit
  }

  push(text: string): void {
    const all = this.tail + text
    // Without any line feed, lines end with CR, as on machines of long ago.
    const feeds = all.includes('\n')
    const to = 1 + (feeds ? all.lastIndexOf('\n') : all.lastIndexOf('\r', all.length - 2))
    this.tail = all.slice(to)
    if (to > 0) this.lines(all.slice(0, to - 1))
  }

  end(): void {
    const { tail } = this
    this.tail = ''
    const ended = /[\r\n]$/.test(tail)
    if (tail !== '') this.lines(ended ? tail.slice(0, -1) : tail, ended)
    while (this.open.length > 0) this.literally()
  }

  /** Lines without the end of the last one; `ended`: whether that one had an end. */
  private lines(text: string, ended = true): void {
    const lines = text.split('\n')
    const last = lines.length - 1
    for (let i = 0; i <= last; i++) {
      const line = lines[i]!
      if (line.indexOf('\r') < 0) this.take(line, ended || i < last)
      else for (const part of line.replace(/\r+$/, '').split('\r')) this.take(part, ended || i < last)
    }
  }

  private take(text: string, ended: boolean): void {
    this.line += 1
    this.feed({ text, line: this.line, ended })
  }

  private feed(record: Rec): void {
    if (this.open.length === 0 && record.text.indexOf('"') < 0) {
      this.emit(record)
      return
    }
    this.open.push(record)
    const text = this.open.map((part) => part.text).join('\n')
    if (!isOpen(text)) {
      const { line } = this.open[0]!
      this.open = []
      this.emit({ text, line, ended: record.ended })
    } else if (this.open.length >= MOST_LINES || text.length > MOST_LETTERS) this.literally()
  }

  /** Nothing closes the first of them: it is taken as it stands, and the others anew. */
  private literally(): void {
    const [first, ...others] = this.open
    this.open = []
    this.emit({ ...first!, text: first!.text.replaceAll('"', '') })
    for (const other of others) this.feed(other)
  }
}

/** Whether a field is still open at the end: a quote opens one only where a field begins (RFC 4180). */
function isOpen(text: string): boolean {
  let at = 0
  for (;;) {
    while (text[at] === ' ') at++
    if (text[at] === '"') {
      at = closing(text, at + 1)
      if (at < 0) return true
    }
    const next = /[,;\t|]/g
    next.lastIndex = at
    const found = next.exec(text)
    if (!found) return false
    at = found.index + 1
  }
}

/** Behind the quote that closes a field, a doubled one being part of it; negative: none does. */
function closing(text: string, from: number): number {
  let at = text.indexOf('"', from)
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2)
  return at < 0 ? -1 : at + 1
}
