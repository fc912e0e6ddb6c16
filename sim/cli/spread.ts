import { createHash } from 'node:crypto'
import base64 from 'virtual:core'
import { answerOf, QUANTILES, type SpreadAnswer } from '../ask/spread/answer.ts'
import { type Batch, batchesOf, type SpreadStudy } from '../ask/spread/batch.ts'
import { BATCH, SAMPLINGS } from '../ask/spread/points.ts'
import { runSpread, type SpreadProgress } from '../ask/spread/run.ts'
import { type DriverRows, type Drivers, driversAnswer, runDrivers } from '../ask/spread/run-drivers.ts'
import type { Tally } from '../ask/spread/tally.ts'
import { METRICS } from '../job/grip/metrics.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { metricText } from '../say/metric.ts'
import { demandName, driverText, failedDemands, holdSentence, percent, rangeText } from '../say/spread.ts'
import { Refusal } from '../scenario/index.ts'
import { STRATEGIES } from '../strategy/index.ts'
import { type Command, oneOf, optionsOf, Refused, SCENARIO_OPTIONS, strategyNamed, wholeOf } from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'
import { batchesOfPiece, fingerprintOf, joinPieces, writePiece } from './piece.ts'
import { progressOf } from './progress.ts'
import { spreadCsv } from './spread-csv.ts'

/** Most parts of one study: a year of a fast line. */
const MOST_GRIPS = 1e7

/** Which build of the simulator has gripped, so that pieces of two are not put together. */
const simulator = () => createHash('sha256').update(base64).digest('hex').slice(0, 16)

export const spread: Command = {
  id: 'spread',
  takes: `FILE [--grips N] [--seed S] [--sampling ${SAMPLINGS.join('|')}] [--strategy ID|all] [--drivers N] [--piece I/N --out PIECE] [--set PATH=VALUE …] [--format table|json|csv]`,
  does: 'of many parts that vary as the file says, how many hold, and what the others fail',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      grips: { type: 'string' },
      seed: { type: 'string' },
      sampling: { type: 'string', default: 'sobol' },
      strategy: { type: 'string', default: 'all' },
      drivers: { type: 'string' },
      piece: { type: 'string' },
      out: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const form = oneOf('--format', values.format, ['table', 'json', 'csv'] as const)
    const wanted = pieceNamed(values.piece, values.out)
    if (wanted && form === 'csv') throw new Refused(['--piece: given with --format csv, allowed with table or json'])
    const study: SpreadStudy = {
      grips: wholeOf('--grips', values.grips, 1, MOST_GRIPS) ?? 1000,
      seed: wholeOf('--seed', values.seed, 0, 2 ** 32 - 1) ?? 1,
      sampling: oneOf('--sampling', values.sampling, SAMPLINGS),
      strategies: values.strategy === 'all' ? STRATEGIES.map(({ id }) => id) : [strategyNamed(values.strategy)],
      scenario: readScenario(positionals[0], values.set),
    }
    if (study.scenario.spread.varies.length === 0)
      throw new Refused(['spread.varies: given nothing that varies, allowed at least one quantity with its law'])
    const { piece, of } = wanted ?? { piece: 1, of: 1 }
    if (form === 'csv') {
      const all: Batch[] = []
      await carriedOut(study, batchesOfPiece(study.grips, 1, 1), (batch) => all.push(batch))
      process.stdout.write(spreadCsv(study, all))
      return 0
    }
    const samples = samplesWanted(values.drivers, study.grips)
    const batches = batchesOfPiece(study.grips, piece, of)
    const tallies = await carriedOut(study, batches)
    const rows = await driven(study, samplesOf(batches, samples))
    if (wanted) writePiece(wanted.out, { study, piece, of, samples, tallies, rows }, simulator())
    else tell(study, tallies, rows, form)
    return 0
  },
}

export const gather: Command = {
  id: 'gather',
  takes: 'PIECE … [--format table|json]',
  does: 'puts the pieces of one study together, to the same answer as the uncut one',
  run(args) {
    const { values, positionals } = optionsOf(args, { format: SCENARIO_OPTIONS.format }, Number.POSITIVE_INFINITY)
    const form = formNamed(values.format)
    const { study, tallies, rows } = joinPieces(positionals, simulator())
    tell(study, tallies, rows, form)
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

function tell(study: SpreadStudy, tallies: Tally[], rows: DriverRows[], form: 'table' | 'json'): void {
  const answers = tallies.map((tally, at) => {
    const driven = driversAnswer(study, rows[at]!)
    const drivers = { driven: driven?.of ?? null, drivers: driven?.drivers ?? [] }
    return { ...answerOf(study.scenario, study.sampling, tally), ...drivers, hash: fingerprintOf(tally) }
  })
  const { grips, seed, sampling } = study
  if (form === 'json') printJson({ format: 'jawbench-spread', version: 1, grips, seed, sampling, results: answers })
  else print(table(study, answers))
}

type Told = SpreadAnswer & { driven: Drivers['of'] | null; drivers: Drivers['drivers'] }

function table({ scenario, sampling, seed }: SpreadStudy, answers: Told[]): string {
  return [
    scenario.name,
    `${scenario.spread.varies.length} quantities vary, sampling ${sampling}, seed ${seed}; intervals of 95 %`,
    ...answers.flatMap((answer) => ['', ...linesOf(answer)]),
  ].join('\n')
}

function linesOf(answer: Told): string[] {
  const { strategy, shares, fit, worst, cut, driven, drivers } = answer
  const line = (label: string, text: string) => `  ${label.padEnd(48)}${text}`
  const fates = Object.entries(shares).filter(([fate, { count }]) => fate !== 'held' && count > 0)
  return [
    `${strategy}: ${holdSentence(answer)}`,
    ...(fit.count !== shares.held!.count ? [line('and meet every requirement and rating', shareText(fit))] : []),
    ...fates.map(([fate, share]) => line(fate, shareText(share))),
    ...failedDemands(answer).map(({ demand, share }) => line(`fail: ${demandName(demand)}`, shareText(share))),
    ...HEADLINES.map((id) => line(labelOf(id), quantileText(answer, id))),
    ...cut.map(({ path, share }) => line(`cut at its range: ${path}`, percent(share))),
    ...[...drivers]
      .sort((a, b) => b.total.value - a.total.value)
      .slice(0, 5)
      .map(({ path, first, total }) =>
        line(`${driven === 'failing' ? 'failures' : 'spare'} by ${path}`, driverText({ first, total })),
      ),
    line(
      'worst parts',
      worst
        .slice(0, 5)
        .map(({ index }) => `#${index}`)
        .join(', ') || 'none',
    ),
  ]
}

const shareText = (share: { share: number; low: number; high: number }) =>
  `${percent(share.share)} (${rangeText(share)})`

const HEADLINES = ['peakForce', 'settledForce', 'holdMargin', 'damageMargin'] as const
const metricOf = (id: (typeof HEADLINES)[number]) => METRICS.find((metric) => metric.id === id)!

function labelOf(id: (typeof HEADLINES)[number]): string {
  const { label, unit, shown = unit } = metricOf(id)
  return `${label.toLowerCase()} [${shown}], 1, 50, 99 %`
}

function quantileText({ figures }: SpreadAnswer, id: (typeof HEADLINES)[number]): string {
  const { quantiles } = figures[id]
  const text = (value: number | null) => inPlainSpaces(metricText(metricOf(id), value, 'si').text)
  return [QUANTILES[0], '0.5' as const, QUANTILES.at(-1)!].map((p) => text(quantiles[p])).join('  ')
}

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
