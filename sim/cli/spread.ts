import { createHash } from 'node:crypto'
import base64 from 'virtual:core'
import { answerOf, QUANTILES, type SpreadAnswer } from '../ask/spread/answer.ts'
import { batchesOf, type SpreadStudy } from '../ask/spread/batch.ts'
import { SAMPLINGS } from '../ask/spread/points.ts'
import { runSpread } from '../ask/spread/run.ts'
import type { Tally } from '../ask/spread/tally.ts'
import { METRICS } from '../job/grip/metrics.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { metricText } from '../say/metric.ts'
import { demandName, failedDemands, holdSentence, percent, rangeText } from '../say/spread.ts'
import { Refusal } from '../scenario/index.ts'
import { STRATEGIES } from '../strategy/index.ts'
import { type Command, numberOf, optionsOf, Refused, SCENARIO_OPTIONS, strategyNamed } from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'
import { batchesOfPiece, fingerprintOf, joinPieces, writePiece } from './piece.ts'
import { progressOf } from './progress.ts'

/** Most parts of one study: a year of a fast line. */
const MOST_GRIPS = 1e7

/** Which build of the simulator has gripped, so that pieces of two are not put together. */
const simulator = () => createHash('sha256').update(base64).digest('hex').slice(0, 16)

export const spread: Command = {
  id: 'spread',
  takes: `FILE [--grips N] [--seed S] [--sampling ${SAMPLINGS.join('|')}] [--strategy ID|all] [--piece I/N --out PIECE] [--set PATH=VALUE …] [--format table|json|csv]`,
  does: 'of many parts that vary as the file says, how many hold, and what the others fail',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      grips: { type: 'string' },
      seed: { type: 'string' },
      sampling: { type: 'string', default: 'sobol' },
      strategy: { type: 'string', default: 'all' },
      piece: { type: 'string' },
      out: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const form = formNamed(values.format)
    const wanted = pieceNamed(values.piece, values.out)
    const study: SpreadStudy = {
      grips: whole('--grips', values.grips, 1, MOST_GRIPS) ?? 1000,
      seed: whole('--seed', values.seed, 0, 2 ** 32 - 1) ?? 1,
      sampling: oneOf('--sampling', values.sampling, SAMPLINGS),
      strategies: values.strategy === 'all' ? STRATEGIES.map(({ id }) => id) : [strategyNamed(values.strategy)],
      scenario: readScenario(positionals[0], values.set),
    }
    if (study.scenario.spread.varies.length === 0)
      throw new Refused(['spread.varies: given nothing that varies, allowed at least one quantity with its law'])
    const { piece, of } = wanted ?? { piece: 1, of: 1 }
    const tallies = await carriedOut(study, batchesOfPiece(study.grips, piece, of))
    if (wanted) writePiece(wanted.out, { study, piece, of, tallies }, simulator())
    else tell(study, tallies, form)
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
    const { study, tallies } = joinPieces(positionals, simulator())
    tell(study, tallies, form)
    return 0
  },
}

async function carriedOut(study: SpreadStudy, batches: number[]): Promise<Tally[]> {
  const progress = progressOf(`${batches.length} of ${batchesOf(study.grips)} batches`)
  try {
    return await runSpread(study, crew, ({ done, of }) => progress.tell(done / of), batches)
  } catch (error) {
    if (error instanceof Refusal) throw new Refused([error.message])
    throw error
  } finally {
    progress.end()
  }
}

function tell(study: SpreadStudy, tallies: Tally[], form: 'table' | 'json'): void {
  const answers = tallies.map((tally) => ({
    ...answerOf(study.scenario, study.sampling, tally),
    hash: fingerprintOf(tally),
  }))
  const { grips, seed, sampling } = study
  if (form === 'json') printJson({ format: 'jawbench-spread', version: 1, grips, seed, sampling, results: answers })
  else print(table(study, answers))
}

function table({ scenario, sampling, seed }: SpreadStudy, answers: SpreadAnswer[]): string {
  return [
    scenario.name,
    `${scenario.spread.varies.length} quantities vary, sampling ${sampling}, seed ${seed}; intervals of 95 %`,
    ...answers.flatMap((answer) => ['', ...linesOf(answer)]),
  ].join('\n')
}

function linesOf(answer: SpreadAnswer): string[] {
  const { strategy, shares, fit, worst, cut } = answer
  const line = (label: string, text: string) => `  ${label.padEnd(34)}${text}`
  const fates = Object.entries(shares).filter(([fate, { count }]) => fate !== 'held' && count > 0)
  return [
    `${strategy}: ${holdSentence(answer)}`,
    ...(fit.count !== shares.held!.count ? [line('and meet every requirement and rating', shareText(fit))] : []),
    ...fates.map(([fate, share]) => line(fate, shareText(share))),
    ...failedDemands(answer).map(({ demand, share }) => line(`fail: ${demandName(demand)}`, shareText(share))),
    ...HEADLINES.map((id) => line(labelOf(id), quantileText(answer, id))),
    ...cut.map(({ path, share }) => line(`cut at its range: ${path}`, percent(share))),
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

function oneOf<const T extends string>(option: string, given: string, allowed: readonly T[]): T {
  const found = allowed.find((each) => each === given)
  if (!found) throw new Refused([`${option}: given "${given}", allowed ${allowed.join(', ')}`])
  return found
}

function whole(option: string, given: string | undefined, least: number, most: number): number | undefined {
  const value = numberOf(option, given)
  if (value !== undefined && !(Number.isInteger(value) && value >= least && value <= most))
    throw new Refused([`${option}: given "${given}", allowed a whole number from ${least} to ${most}`])
  return value
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
