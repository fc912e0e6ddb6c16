import { createHash } from 'node:crypto'
import base64 from 'virtual:core'
import { type Batch, batchesOf, type SpreadStudy } from '../ask/spread/batch.ts'
import { BATCH, SAMPLINGS } from '../ask/spread/points.ts'
import { runSpread, type SpreadProgress } from '../ask/spread/run.ts'
import { type DriverRows, runDrivers, type Subject, subjectsFor } from '../ask/spread/run-drivers.ts'
import type { Tally } from '../ask/spread/tally.ts'
import { runTightened } from '../ask/spread/tighten.ts'
import { type JobId, Refusal } from '../scenario/index.ts'
import {
  type Command,
  numberOf,
  oneOf,
  optionsOf,
  Refused,
  SCENARIO_OPTIONS,
  strategiesNamed,
  wholeOf,
} from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { batchesOfPiece, joinPieces, type Tight, writePiece } from './piece.ts'
import { progressOf } from './progress.ts'
import { spreadCsv } from './spread-csv.ts'
import { tell } from './spread-table.ts'

/** Most parts of one study: a year of a fast line. */
const MOST_GRIPS = 1e7

/** Which build of the simulator has gripped, so that pieces of two are not put together. */
const simulator = () => createHash('sha256').update(base64).digest('hex').slice(0, 16)

export const spread: Command = {
  id: 'spread',
  takes: `FILE [--grips N] [--seed S] [--sampling ${SAMPLINGS.join('|')}] [--strategy ID|all] [--drivers N] [--of VERDICT|REQUIREMENT] [--tighten FACTOR] [--piece I/N --out PIECE] [--set PATH=VALUE …] [--format table|json|csv]`,
  does: 'of many parts that vary as the file says, how many hold, and what the others fail',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      grips: { type: 'string' },
      seed: { type: 'string' },
      sampling: { type: 'string', default: 'sobol' },
      strategy: { type: 'string', default: 'all' },
      drivers: { type: 'string' },
      of: { type: 'string', default: 'failing' },
      tighten: { type: 'string' },
      piece: { type: 'string' },
      out: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const form = oneOf('--format', values.format, ['table', 'json', 'csv'] as const)
    const wanted = pieceNamed(values.piece, values.out)
    if (wanted && form === 'csv') throw new Refused(['--piece: given with --format csv, allowed with table or json'])
    const scenario = readScenario(positionals[0], values.set, null)
    const study: SpreadStudy = {
      grips: wholeOf('--grips', values.grips, 1, MOST_GRIPS) ?? 1000,
      seed: wholeOf('--seed', values.seed, 0, 2 ** 32 - 1) ?? 1,
      sampling: oneOf('--sampling', values.sampling, SAMPLINGS),
      strategies: strategiesNamed(values.strategy, scenario),
      scenario,
    }
    if (study.scenario.spread.varies.length === 0)
      throw new Refused(['spread.varies: given nothing that varies, allowed at least one quantity with its law'])
    const { piece, of: pieces } = wanted ?? { piece: 1, of: 1 }
    if (form === 'csv') {
      const all: Batch[] = []
      await carriedOut(study, batchesOfPiece(study.grips, 1, 1), (batch) => all.push(batch))
      process.stdout.write(spreadCsv(study, all))
      return 0
    }
    const samples = samplesWanted(values.drivers, study.grips)
    const of = subjectNamed(study.scenario.job, values.of)
    const factor = factorWanted(values.tighten)
    const batches = batchesOfPiece(study.grips, piece, pieces)
    const tallies = await carriedOut(study, batches)
    const rows = await driven(study, samplesOf(batches, samples))
    const tight = factor === undefined ? null : await tightened(study, tallies, factor, batches)
    const counted = { study, tallies, rows, tight }
    if (wanted) writePiece(wanted.out, { ...counted, piece, of: pieces, samples }, simulator())
    else tell(counted, of, form)
    return 0
  },
}

export const gather: Command = {
  id: 'gather',
  takes: 'PIECE … [--of VERDICT|REQUIREMENT] [--format table|json]',
  does: 'puts the pieces of one study together, to the same answer as the uncut one',
  run(args) {
    const known = { format: SCENARIO_OPTIONS.format, of: { type: 'string', default: 'failing' } } as const
    const { values, positionals } = optionsOf(args, known, Number.POSITIVE_INFINITY)
    const form = formNamed(values.format)
    const counted = joinPieces(positionals, simulator())
    tell(counted, subjectNamed(counted.study.scenario.job, values.of), form)
    return 0
  },
}

async function carriedOut(study: SpreadStudy, batches: number[], keep?: (batch: Batch) => void): Promise<Tally[]> {
  const progress = progressOf(`${batches.length} of ${batchesOf(study.grips)} batches`)
  try {
    const told = ({ done, of, batch }: SpreadProgress) => {
      keep?.(batch)
      return progress.tell(done / of)
    }
    return await runSpread(study, crew, told, batches)
  } catch (error) {
    if (error instanceof Refusal) throw new Refused([error.message])
    throw error
  } finally {
    progress.end()
  }
}

/** Samples from which the drivers are worked out unless it is said; each takes a grip for each quantity, and one more. */
const SAMPLES = 100

/** They are told from at least three scramblings, so from as many batches. */
const LEAST_SAMPLES = 3 * BATCH

function samplesWanted(given: string | undefined, grips: number): number {
  const samples = wholeOf('--drivers', given, 0, grips) ?? Math.min(SAMPLES, grips)
  if (samples >= LEAST_SAMPLES || samples === 0) return samples
  if (given === undefined) return 0
  throw new Refused([`--drivers: given "${given}", allowed 0, or ${LEAST_SAMPLES} and more`])
}

const samplesOf = (batches: number[], samples: number) =>
  batches.flatMap((batch) => Array.from({ length: BATCH }, (_, at) => batch * BATCH + at)).filter((at) => at < samples)

async function driven(study: SpreadStudy, indices: number[]): Promise<DriverRows[]> {
  const progress = progressOf('what drives the failures')
  const all: DriverRows[] = []
  for (const strategy of study.strategies)
    all.push(
      await runDrivers(study, strategy, crew, indices, (done) =>
        progress.tell((all.length + done) / study.strategies.length),
      ),
    )
  progress.end()
  return all
}

async function tightened(study: SpreadStudy, tallies: Tally[], factor: number, batches: number[]): Promise<Tight> {
  const progress = progressOf('what tightening would buy')
  const counts = await runTightened(study, tallies, factor, crew, (done) => progress.tell(done), batches)
  progress.end()
  return { factor, counts }
}

/** By how much spreads are drawn together: 0 for a quantity that stays at its value. */
function factorWanted(given: string | undefined): number | undefined {
  const factor = numberOf('--tighten', given)
  if (factor === undefined || (factor >= 0 && factor < 1)) return factor
  throw new Refused([`--tighten: given "${given}", allowed 0 to less than 1`])
}

const subjectNamed = (job: JobId, given: string): Subject => oneOf('--of', given, subjectsFor(job))

function formNamed(given: string): 'table' | 'json' {
  return oneOf('--format', given, ['table', 'json'] as const)
}

/** I/N and where it goes; both or neither. */
function pieceNamed(given: string | undefined, out: string | undefined) {
  if (given === undefined && out === undefined) return null
  if (given === undefined || out === undefined)
    throw new Refused(['--piece and --out: given one, allowed both or neither'])
  const [, piece, of] = /^([1-9]\d{0,5})\/([1-9]\d{0,5})$/.exec(given) ?? []
  if (!piece || Number(piece) > Number(of))
    throw new Refused([`--piece: given "${given}", allowed I/N with I from 1 to N`])
  return { piece: Number(piece), of: Number(of), out }
}
