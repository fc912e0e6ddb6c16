/** Text to records: a line each, or several where a quoted field holds line ends. */

export interface Rec {
  text: string
  /** Number of its first line, from 1. */
  line: number
  /** Whether its line was ended. */
  ended: boolean
}

/** A line with an end that stands in a text, and its number; true: it was taken, and is no record to be told. */
type Quick = (text: string, from: number, to: number, line: number) => boolean

/** Lines and letters that a quoted field may span; beyond, its opening quote was a stray one. */
const MOST_LINES = 50
const MOST_LETTERS = 20_000

const CR = 13

export class Records {
  private readonly emit: (record: Rec) => void
  private readonly quick: Quick
  private line = 0
  private tail = ''
  private open: Rec[] = []

  constructor(emit: (record: Rec) => void, quick: Quick = () => false) {
    this.emit = emit
    this.quick = quick
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
    let from = 0
    for (;;) {
      const feed = text.indexOf('\n', from)
      const to = feed < 0 ? text.length : feed
      this.one(text, from, to, ended || feed >= 0)
      if (feed < 0) return
      from = feed + 1
    }
  }

  private one(text: string, from: number, to: number, ended: boolean): void {
    let end = to
    while (end > from && text.charCodeAt(end - 1) === CR) end--
    if (ended && this.open.length === 0 && this.quick(text, from, end, this.line + 1)) {
      this.line += 1
      return
    }
    const line = text.slice(from, end)
    if (line.indexOf('\r') < 0) this.take(line, ended)
    else for (const part of line.split('\r')) this.take(part, ended)
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
