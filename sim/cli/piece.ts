/** A piece of a study in a file: what it belongs to, its tallies, and a sum of its own text by which damage shows. */
import { createHash } from 'node:crypto'
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { batchesOf, type SpreadStudy } from '../ask/spread/batch.ts'
import type { DriverPart, DriverRows } from '../ask/spread/run-drivers.ts'
import { joinTally, type Tally, type TallyText, tallyFrom, tallyText } from '../ask/spread/tally.ts'
import { joinTightened, type TightCounts } from '../ask/spread/tighten.ts'
import { Refused } from './command.ts'
import { reasonOf } from './system.ts'

const FORMAT = 'jawbench-piece'
const VERSION = 2

/** What tighter spreads hold. */
export interface Tight {
  factor: number
  counts: TightCounts[]
}

export interface Counted {
  study: SpreadStudy
  tallies: Tally[]
  /** Of each strategy. */
  rows: DriverRows[]
  /** Null: not asked. */
  tight: Tight | null
}

export interface Piece extends Counted {
  /** Which one, from 1, of how many. */
  piece: number
  of: number
  /** Samples of the whole study from which its drivers are worked out. */
  samples: number
}

/** Piece I of N holds every N-th batch, so that all of them take as long. */
export const batchesOfPiece = (grips: number, piece: number, of: number) =>
  Array.from({ length: batchesOf(grips) }, (_, batch) => batch).filter((batch) => batch % of === piece - 1)

const sumOf = (text: string) => createHash('sha256').update(text).digest('hex')

/** The same for the same counts, whoever has counted them. */
export const fingerprintOf = (tally: Tally) => sumOf(JSON.stringify(tallyText(tally))).slice(0, 16)

/** `simulator` tells one build of the simulator from another. Written beside and renamed, so a file is whole or not there. */
export function writePiece(
  file: string,
  { study, piece, of, samples, tallies, rows, tight }: Piece,
  simulator: string,
): void {
  const counted = { tallies: tallies.map(tallyText), rows: rows.map((each) => [...each].sort(([a], [b]) => a - b)) }
  const content = { format: FORMAT, version: VERSION, simulator, piece, of, samples, study, ...counted, tight }
  const text = JSON.stringify(content)
  const draft = `${file}.${process.pid}`
  try {
    writeFileSync(draft, `${JSON.stringify({ ...content, sum: sumOf(text) })}\n`)
    renameSync(draft, file)
  } catch (error) {
    rmSync(draft, { force: true })
    throw new Refused([`--out: ${file} cannot be written, ${reasonOf(error)}`])
  }
}

interface PieceText {
  format: string
  version: number
  simulator: string
  piece: number
  of: number
  samples: number
  study: SpreadStudy
  tallies: TallyText[]
  rows: [number, DriverPart[]][][]
  tight: Tight | null
  sum: string
}

function readPiece(file: string, simulator: string): Piece {
  const { sum, ...content } = parsed(file)
  const refuse = (given: string, allowed: string) => new Refused([`${file}: given ${given}, allowed ${allowed}`])
  if (content.format !== FORMAT) throw refuse(`"format": ${JSON.stringify(content.format)}`, `"${FORMAT}"`)
  if (content.version !== VERSION) throw refuse(`version ${JSON.stringify(content.version)}`, String(VERSION))
  if (sum !== sumOf(JSON.stringify(content))) throw refuse('a damaged piece', 'a piece as it was written')
  if (content.simulator !== simulator) throw refuse('a piece of another build of the simulator', `one of ${simulator}`)
  const { study, piece, of, samples, tallies, rows, tight } = content
  return {
    study,
    piece,
    of,
    samples,
    tight,
    tallies: tallies.map((tally) => tallyFrom(study.scenario.job, tally)),
    rows: rows.map((each) => new Map(each)),
  }
}

function parsed(file: string): PieceText {
  try {
    const read: unknown = JSON.parse(readFileSync(file, 'utf8'))
    if (typeof read === 'object' && read !== null) return read as PieceText
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw new Refused([`${file}: ${reasonOf(error)}`])
  }
  throw new Refused([`${file}: given no whole piece, allowed a file that spread --piece has written`])
}

/** All pieces of one study, put together. Refused by name: a foreign, doubled, missing or damaged piece. */
export function joinPieces(files: string[], simulator: string): Counted {
  const pieces = files.map((file) => ({ file, ...readPiece(file, simulator) }))
  const [first] = pieces
  if (!first) throw new Refused(['no piece was named'], true)
  const known = new Map<number, string>()
  for (const { file, study, piece, of, samples, tight } of pieces) {
    const same = of === first.of && samples === first.samples && tight?.factor === first.tight?.factor
    if (!same || JSON.stringify(study) !== JSON.stringify(first.study))
      throw new Refused([`${file}: given a piece of another study than ${first.file}, allowed pieces of one`])
    const other = known.get(piece)
    if (other) throw new Refused([`${file}: given piece ${piece} again, allowed once; it is ${other} too`])
    known.set(piece, file)
  }
  const missing = Array.from({ length: first.of }, (_, at) => at + 1).filter((piece) => !known.has(piece))
  if (missing.length > 0)
    throw new Refused([`given ${pieces.length} of ${first.of} pieces, missing ${missing.join(', ')}`])
  const { study, tallies, rows, tight } = first
  for (const piece of pieces.slice(1)) {
    for (const [at, tally] of piece.tallies.entries()) joinTally(tallies[at]!, tally)
    for (const [at, more] of piece.rows.entries()) for (const [index, row] of more) rows[at]!.set(index, row)
    if (tight && piece.tight) joinTightened(tight.counts, piece.tight.counts)
  }
  return { study, tallies, rows, tight }
}
