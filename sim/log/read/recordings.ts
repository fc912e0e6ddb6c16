/** The recordings of a log: their stamps and values in SI, and what their steps are like. */
import type { Group } from './clock.ts'
import { type Guessed, nameOf } from './guess.ts'
import type { Column, Recording } from './log.ts'
import { type Scale, scaleOf } from './scale.ts'
import { GAP, type Segment } from './segments.ts'
import { medianRise, type Stats, statsOf } from './stats.ts'
import type { Table } from './table.ts'

const AS_READ: Scale = { scale: null, offset: 0, si: '' }

/** `times` are the stamps of the segment's rows [s]. */
export function recordingOf(table: Table, segment: Segment, times: Float64Array, { clock, columns }: Group): Recording {
  const { rows } = segment
  const read = columns.map((guess) => columnOver(guess, rows))
  return {
    rows: rows.length,
    line: table.lines[rows[0]!]!,
    lastLine: table.lines[rows.at(-1)!]!,
    clock,
    from: times[0]!,
    to: times.at(-1)!,
    ...stepsOf(times),
    repeated: segment.repeated,
    columns: read.map(({ column }) => column),
    time: times,
    values: read.map(({ values }) => values),
  }
}

/** A column over some rows. */
function columnOver(guess: Guessed, rows: Uint32Array): { column: Column; values: Float64Array } {
  const { scale, offset } = scaleIn(guess)
  const values = taken(guess.raw.values, rows)
  if (scale !== null && (scale !== 1 || offset !== 0))
    for (let row = 0; row < values.length; row++) values[row] = values[row]! * scale + offset
  return { column: described(guess, statsOf(values)), values }
}

/** A column over all rows of the file. */
export function columnOf(guess: Guessed): Column {
  const { scale, offset } = scaleIn(guess)
  const si = (value: number) => (scale === null ? value : value * scale + offset)
  const { least, most, resolution, missing } = guess.stats
  const ends = [si(least), si(most)]
  return described(guess, {
    least: Math.min(...ends),
    most: Math.max(...ends),
    resolution: resolution * Math.abs(scale ?? 1),
    missing,
  })
}

const scaleIn = (guess: Guessed): Scale =>
  guess.channel && guess.channel !== 'time' ? scaleOf(guess, guess.channel) : AS_READ

function described(guess: Guessed, found: Pick<Stats, 'least' | 'most' | 'resolution' | 'missing'>): Column {
  const { channel, reason, unit, place, raw } = guess
  const { scale, offset, si } = scaleIn(guess)
  const { least, most, resolution, missing } = found
  return {
    header: guess.header,
    place,
    channel: channel === 'time' ? null : channel,
    reason,
    unit,
    si,
    scale,
    offset,
    least,
    most,
    resolution,
    missing,
    words: raw.wordy ? raw.words : null,
    clock: null,
  }
}

function taken(raw: Float64Array, rows: Uint32Array): Float64Array {
  const values = new Float64Array(rows.length)
  for (let i = 0; i < rows.length; i++) values[i] = raw[rows[i]!]!
  return values
}

/** Of the stamps of some rows [raw], in seconds. */
export function timesOf(stamps: Float64Array, rows: Uint32Array, scale: number): Float64Array {
  const times = taken(stamps, rows)
  for (let row = 0; row < times.length; row++) times[row] = times[row]! * scale
  return times
}

/** Gaps count neither to the step nor to its jitter. */
function stepsOf(times: Float64Array): Pick<Recording, 'step' | 'jitter' | 'gaps' | 'longest'> {
  // Rounding of the stamps is no gap.
  const longestPlain = GAP * medianRise(times) * (1 + 1e-9)
  let [sum, plain, gaps, longest] = [0, 0, 0, 0]
  for (let row = 1; row < times.length; row++) {
    const step = times[row]! - times[row - 1]!
    if (step > longest) longest = step
    if (step > longestPlain) gaps++
    else {
      sum += step
      plain++
    }
  }
  const step = sum / plain
  let squares = 0
  for (let row = 1; row < times.length; row++) {
    const each = times[row]! - times[row - 1]!
    if (each <= longestPlain) squares += (each - step) ** 2
  }
  return { step, jitter: Math.sqrt(squares / plain), gaps, longest }
}

/**
 * Recordings of several clocks as one, on the stamps of that with most rows: values of the others are interpolated linearly, and NaN
 * outside of their own span.
 */
export function merged(parts: readonly { recording: Recording; clock: string }[]): Recording {
  const [base, ...others] = [...parts].sort((a, b) => b.recording.rows - a.recording.rows)
  const { recording } = base!
  const columns = [...recording.columns]
  const values = [...recording.values]
  for (const other of others)
    other.recording.columns.forEach((column, place) => {
      const own = interpolated(other.recording.time, other.recording.values[place]!, recording.time)
      const { least, most, resolution, missing } = statsOf(own)
      columns.push({ ...column, least, most, resolution, missing, clock: other.clock })
      values.push(own)
    })
  return { ...recording, columns, values }
}

function interpolated(from: Float64Array, values: Float64Array, to: Float64Array): Float64Array {
  const out = new Float64Array(to.length).fill(Number.NaN)
  let at = 0
  for (let row = 0; row < to.length; row++) {
    const time = to[row]!
    while (at < from.length - 2 && from[at + 1]! < time) at++
    const [left, right] = [from[at]!, from[at + 1]!]
    if (time < left || !(time <= right)) continue
    const share = (time - left) / (right - left)
    out[row] =
      share === 0 ? values[at]! : share === 1 ? values[at + 1]! : values[at]! + share * (values[at + 1]! - values[at]!)
  }
  return out
}

/** Whether columns of several clocks are the same channels again, recording beside recording. */
export function areAlike(a: readonly Guessed[], b: readonly Guessed[]): boolean {
  const plain = (guess: Guessed) =>
    nameOf(guess)
      .replaceAll(/[\d\W_]+/g, '')
      .toLowerCase()
  const names = new Set(a.map(plain))
  return b.some((guess) => names.has(plain(guess)))
}
