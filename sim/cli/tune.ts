import { type AnyRunner, runnerOn } from '../ask/runner.ts'
import { runAfter } from '../ask/spread/after.ts'
import { bestOf, type TuneProgress, tradeOff, tuneGains } from '../ask/tune.ts'
import type { TuneCandidate, TuneFigure, TuneObjective, TuneOptions } from '../ask/tune-judge.ts'
import { JOBS } from '../job/index.ts'
import { STIFFNESS_SPREAD } from '../loops/working-point.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { studyWords } from '../say/jobs.ts'
import { othersSentence } from '../say/spread.ts'
import { missWhy, missWords } from '../say/tune.ts'
import { wordingOf } from '../say/wording.ts'
import { type JobId, Refusal, type Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import {
  type Command,
  figureText,
  isJson,
  numberOf,
  optionsOf,
  Refused,
  refusing,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
  strategyNamed,
} from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'
import { searchedBy } from './progress.ts'

const ROLES = ['time', 'peak', 'ripple'] as const

/** What may be asked for, by the names that the job has for its figures; the first is asked for where nothing is. */
const objectivesOf = (job: JobId): Map<string, TuneObjective> =>
  new Map([...ROLES.map((role): [string, TuneObjective] => [JOBS[job].tune[role], role]), ['share', 'share']])

/** An option, the least and the most that it may be, and its value where it is left out. */
const NUMBERS = {
  'phase-margin': [5, 90, 45],
  'peak-sensitivity': [1.05, 5, 2],
  spread: [0, 0.9, STIFFNESS_SPREAD],
  within: [1e-3, 100, undefined],
  margin: [0, 10, 0],
} as const

const OPTIONS = {
  ...SCENARIO_OPTIONS,
  strategy: { type: 'string', default: '' },
  objective: { type: 'string' },
  'phase-margin': { type: 'string' },
  'peak-sensitivity': { type: 'string' },
  spread: { type: 'string' },
  within: { type: 'string' },
  margin: { type: 'string' },
} as const

export const tune: Command = {
  id: 'tune',
  takes: `FILE --strategy ID [--objective FIGURE|share] [--phase-margin DEGREES] [--peak-sensitivity RATIO] [--spread SHARE] [--within SECONDS] [--margin SHARE] ${SCENARIO_USAGE}`,
  does: 'gains that keep their margins and do the work well on the softest, the nominal and the stiffest of it, with the wanted effort',
  async run(args, core) {
    const run = runnerOn(core) as AnyRunner
    const { values, positionals } = optionsOf(args, OPTIONS, 1)
    const strategy = strategyNamed(values.strategy)
    const json = isJson(values.format)
    const scenario = readScenario(positionals[0], values.set, null)
    const options = tuneOptions(scenario.job, strategy, values)
    if (options.objective === 'share' && scenario.spread.varies.length === 0)
      throw new Refused([
        '--objective: given share, allowed where spread.varies has at least one quantity with its law',
      ])
    const progress = refusing(() => searched(scenario, options, run))
    const candidates = progress.map(({ candidate }) => candidate)
    const { present } = progress[0]!
    const answer = { present, best: bestOf(candidates, options.objective), tradeOff: tradeOff(candidates) }
    const sound = candidates.filter((candidate) => candidate.sound).length
    const counts = { tried: candidates.length, sound, missed: missedOf(candidates) }
    const parts = await otherParts(scenario, options, answer.best)
    if (json)
      printJson({
        format: 'jawbench-tune',
        version: 1,
        ...asked(scenario.job, options),
        ...named(scenario.job, answer),
        ...counts,
        ...(parts && { parts }),
      })
    else
      print(
        tuneTable(scenario.job, answer, counts) +
          (parts ? `\n${othersSentence(scenario.job, parts, OTHERS.grips)}` : ''),
      )
    return 0
  },
}

function searched(scenario: Scenario, options: TuneOptions, run: AnyRunner): TuneProgress[] {
  try {
    return searchedBy('search for gains', tuneGains(scenario, options, run))
  } catch (error) {
    if (error instanceof Refusal) throw new Refused([error.message])
    throw error
  }
}

/** Parts that the search has not seen: the share of the best of many on the parts that chose it is a little lucky. */
const OTHERS = { grips: 400, seed: 2 }

async function otherParts(scenario: Scenario, { strategy, objective }: TuneOptions, best: TuneCandidate | null) {
  if (objective !== 'share' || !best) return null
  const [gained] = await runAfter({ scenario, strategy, ...OTHERS }, [best.edits], crew)
  return gained ?? null
}

function tuneOptions(job: JobId, strategy: StrategyId, values: Record<string, unknown>): TuneOptions {
  const objectives = objectivesOf(job)
  const wanted = (values.objective as string | undefined) ?? JOBS[job].tune.time
  const objective = objectives.get(wanted)
  if (!objective) throw new Refused([`--objective: given "${wanted}", allowed ${[...objectives.keys()].join(', ')}`])
  const number = (name: keyof typeof NUMBERS) => {
    const [least, most, otherwise] = NUMBERS[name]
    const value = numberOf(`--${name}`, values[name] as string | undefined)
    if (value !== undefined && !(value >= least && value <= most))
      throw new Refused([`--${name}: given "${value}", allowed ${least} to ${most}`])
    return value ?? otherwise
  }
  return {
    strategy,
    objective,
    phaseMargin: number('phase-margin')!,
    peakSensitivity: number('peak-sensitivity')!,
    spread: number('spread')!,
    within: number('within'),
    spare: number('margin'),
  }
}

/** What the others miss first, the most frequent first. */
function missedOf(candidates: TuneCandidate[]): { miss: string; count: number }[] {
  const counts = new Map<string, number>()
  for (const { miss } of candidates) if (miss) counts.set(missWords(miss), (counts.get(missWords(miss)) ?? 0) + 1)
  return [...counts].map(([miss, count]) => ({ miss, count })).sort((a, b) => b.count - a.count)
}

type Answer = { present: TuneCandidate; best: TuneCandidate | null; tradeOff: TuneCandidate[] }
type Counts = { tried: number; sound: number; missed: { miss: string; count: number }[] }

/** The question by the names that the job has for its figures. */
function asked(job: JobId, { objective, spare, ...options }: TuneOptions) {
  const name = [...objectivesOf(job)].find(([, role]) => role === objective)![0]
  return { ...options, objective: name, margin: spare }
}

/** The same of what was found. */
function named(job: JobId, { present, best, tradeOff }: Answer) {
  const { tune } = JOBS[job]
  const one = ({ time, peak, ripple, settled, spare, ...rest }: TuneCandidate) => ({
    ...rest,
    [tune.time]: time,
    [tune.peak]: peak,
    [tune.ripple]: ripple,
    [tune.settled]: settled,
    [tune.spare.length === 1 ? tune.spare[0]! : 'margin']: spare,
  })
  return { present: one(present), best: best && one(best), tradeOff: tradeOff.map(one) }
}

export function tuneTable(job: JobId, { present, best, tradeOff }: Answer, { tried, sound, missed }: Counts): string {
  const figures = figuresOf(job).filter(({ key }) => key !== 'share' || present.share !== null || best?.share != null)
  const shown: [string, TuneCandidate][] = [
    ['on the bench', present],
    ...tradeOff.map((each): [string, TuneCandidate] => [each === best ? 'best' : '', each]),
    ...(best && !tradeOff.includes(best) ? [['best', best] as [string, TuneCandidate]] : []),
  ]
  const gains = present.edits.map(({ path }) => path)
  const rows = [
    ['', ...figures.map(({ label }) => label), ...gains],
    ...shown.map(([name, candidate]) => [
      name,
      ...figures.map(({ key, scale = 1 }) => figureText(candidate[key] === null ? null : candidate[key] * scale)),
      ...candidate.edits.map(({ value }) => figureText(value as number)),
    ]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  const why = present.miss && inPlainSpaces(missWhy(present.miss, wordingOf('si')))
  return [
    `${tried} sets of gains tried, ${sound} sound.`,
    ...(why ? [`The gains on the bench are not sound: ${why}.`] : []),
    ...rows.map((row) =>
      row
        .map((cell, column) => cell.padStart(widths[column]!))
        .join('  ')
        .trimEnd(),
    ),
    ...(missed.length > 0 ? [`Missed first: ${missed.map(({ miss, count }) => `${miss} ${count}`).join(', ')}.`] : []),
  ].join('\n')
}

interface Column {
  key: TuneFigure | 'settled' | 'spare' | 'share' | 'phaseMargin' | 'peakSensitivity'
  label: string
  scale?: number
}

/** Worst of the working points and of the three runs. */
function figuresOf(job: JobId): Column[] {
  const { tune, figures, output } = JOBS[job]
  const label = (id: string) => figures.find((figure) => figure.id === id)!.label.toLowerCase()
  return [
    { key: 'time', label: `${label(tune.time)} [ms]`, scale: 1e3 },
    { key: 'peak', label: `${label(tune.peak)} [${output.effort}]` },
    { key: 'settled', label: `settled [${output.effort}]` },
    { key: 'ripple', label: `ripple [${output.effort}]` },
    { key: 'spare', label: 'margin [%]', scale: 100 },
    { key: 'share', label: `${studyWords(job).done} [%]`, scale: 100 },
    { key: 'phaseMargin', label: 'phase margin [°]' },
    { key: 'peakSensitivity', label: 'peak sensitivity' },
  ]
}
