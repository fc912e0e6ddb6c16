/** What a study answers, as a table or as JSON. */
import { answerOf, QUANTILES, type SpreadAnswer } from '../ask/spread/answer.ts'
import type { SpreadStudy } from '../ask/spread/batch.ts'
import { type Drivers, driversAnswer, type Subject } from '../ask/spread/run-drivers.ts'
import { type Tightened, tightenedOf } from '../ask/spread/tighten.ts'
import { JOBS } from '../job/index.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { metricText } from '../say/metric.ts'
import {
  demandName,
  driversSentence,
  driverText,
  failedDemands,
  holdSentence,
  percent,
  rangeText,
  tightSentence,
  tightText,
} from '../say/spread.ts'
import { type JobId, quantityAt } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { print, printJson } from './output.ts'
import { type Counted, fingerprintOf } from './piece.ts'

/** `of`: what the drivers are asked for. */
export function tell({ study, tallies, rows, tight }: Counted, of: Subject, form: 'table' | 'json'): void {
  const answers = tallies.map((tally, at) => ({
    ...answerOf(study.scenario, study.sampling, tally),
    driven: driversAnswer(study, rows[at]!, of),
    hash: fingerprintOf(tally),
  }))
  const tightened = tight?.counts.map((counts) => tightenedOf(study.sampling, counts)) ?? []
  const bought = tight && { factor: tight.factor, tightened }
  const { grips, seed, sampling } = study
  const told = bought && { tighten: bought.factor, tightened }
  const results = answers.map(({ driven, ...answer }) => ({
    ...answer,
    driven: driven?.of ?? null,
    drivenFrom: driven && { count: driven.count, grips: driven.grips },
    drivers: driven?.drivers ?? [],
  }))
  if (form === 'table') print(table(study, answers, bought))
  else printJson({ format: 'jawbench-spread', version: 1, grips, seed, sampling, results, ...told })
}

type Told = SpreadAnswer & { driven: Drivers | null }
type Bought = { factor: number; tightened: Tightened[] }

function table({ scenario, sampling, seed }: SpreadStudy, answers: Told[], bought: Bought | null): string {
  const nameOf = (path: string) => `${quantityAt(scenario, path)?.title ?? path} (${path})`
  return [
    scenario.name,
    `${scenario.spread.varies.length} quantities vary, sampling ${sampling}, seed ${seed}; intervals of 95 %`,
    ...answers.flatMap((answer) => [
      '',
      ...linesOf(scenario.job, answer, nameOf),
      ...(bought ? boughtLines(scenario.job, bought, answer.strategy, nameOf) : []),
    ]),
  ].join('\n')
}

type NameOf = (path: string) => string

const line = (label: string, text: string) => `  ${label.padEnd(48)}${text}`

function linesOf(job: JobId, answer: Told, nameOf: NameOf): string[] {
  const { strategy, shares, fit, worst, cut, driven } = answer
  const { well, study } = JOBS[job]
  const fates = Object.entries(shares).filter(([fate, { count }]) => fate !== well && count > 0)
  return [
    `${strategy}: ${holdSentence(job, answer)}`,
    ...(fit.count !== shares[well]!.count ? [line('and meet every requirement and rating', shareText(fit))] : []),
    ...fates.map(([fate, share]) => line(fate, shareText(share))),
    ...failedDemands(job, answer).map(({ demand, share }) =>
      line(`fail: ${demandName(job, demand)}`, shareText(share)),
    ),
    ...study.told.map((id) => line(...quantileLine(job, answer, id))),
    ...cut.map(({ path, share }) => line(`cut at its range: ${path}`, percent(share))),
    ...(driven ? drivenLines(job, driven, nameOf) : []),
    line(
      'worst parts',
      worst
        .slice(0, 5)
        .map(({ index }) => `#${index}`)
        .join(', ') || 'none',
    ),
  ]
}

const LABELS: Readonly<Record<string, string | undefined>> = { failing: 'failures', spare: 'spare' }

const drivenLines = (job: JobId, driven: Drivers, nameOf: NameOf) => [
  `  ${driversSentence(job, driven, nameOf)}`,
  ...[...driven.drivers]
    .sort((a, b) => b.total.value - a.total.value)
    .slice(0, 5)
    .map((each) => line(`${LABELS[driven.of] ?? driven.of} by ${each.path}`, driverText(each))),
]

function boughtLines(job: JobId, { factor, tightened }: Bought, strategy: StrategyId, nameOf: NameOf): string[] {
  const own = tightened.filter((each) => each.strategy === strategy)
  return [
    `  ${tightSentence(job, own, factor, nameOf)}`,
    ...own.map((each) => line(`spread x ${factor}: ${each.path}`, tightText(job, each))),
  ]
}

const shareText = (share: { share: number; low: number; high: number }) =>
  `${percent(share.share)} (${rangeText(share)})`

function quantileLine(job: JobId, { figures }: SpreadAnswer, id: string): [label: string, text: string] {
  const metric = JOBS[job].figures.find((each) => each.id === id)!
  const { quantiles } = figures[id]!
  const { label, unit, shown = unit } = metric
  const text = (value: number | null) => inPlainSpaces(metricText(metric, value, 'si').text)
  const told = [QUANTILES[0], '0.5' as const, QUANTILES.at(-1)!].map((p) => text(quantiles[p])).join('  ')
  return [`${label.toLowerCase()}${shown === '' ? '' : ` [${shown}]`}, 1, 50, 99 %`, told]
}
