/**
 * Why and rescue of two strategies on the opening preset, each worker of the page as a process of its own, from cold code; and what
 * a search saves because a run ends when the part is lost. Both told in the time of the processor.
 */
import { run } from '../../sim/cli/core.ts'
import { editScenario, explain, PRESETS, rescues, type StrategyId } from '../../sim/index.ts'
import { processorTime } from './clock.ts'
import { spawnPart } from './process.ts'
import { goal, row, summary } from './report.ts'
import { median } from './stats.ts'

/** Of the longest of the workers that share it [s]. */
const GOAL = 1.2
/** Time of the runs that do not save the part, over that of the same runs to their end. */
const GOAL_RATIO = 0.5
const PROCESSES = 3
const ROUNDS = 8

const { scenario } = PRESETS[0]!
const STRATEGIES: StrategyId[] = ['threshold-stop', 'current-clamp']

/** What a worker of the page is given. */
const TASKS: Record<string, (strategy: StrategyId) => void> = {
  why: (strategy) => explain(scenario, strategy, run(scenario, strategy).result.verdict, run),
  'first half of rescue': (strategy) => [...rescues(scenario, strategy, run, { n: 0, of: 2 })],
  'second half of rescue': (strategy) => [...rescues(scenario, strategy, run, { n: 1, of: 2 })],
}

const PAIRS = STRATEGIES.flatMap((strategy) => Object.keys(TASKS).map((task) => ({ strategy, task })))
const nameOf = ({ strategy, task }: (typeof PAIRS)[number]) => `${strategy}, ${task}`

export const RESCUE_SAMPLES: Record<string, () => void> = Object.fromEntries(
  PAIRS.map((pair) => [nameOf(pair), () => console.log(processorTime(() => TASKS[pair.task]!(pair.strategy)))]),
)

export function rescue(): void {
  const times = PAIRS.map((pair) => {
    const samples = Array.from({ length: PROCESSES }, () => Number(spawnPart(nameOf(pair), 'pipe').stdout))
    row(`${nameOf(pair)} [s]`, summary(samples, 2))
    return median(samples)
  })
  const longest = Math.max(...times)
  const all = times.reduce((sum, time) => sum + time, 0)
  goal('why and rescue, the longest worker', `${longest.toFixed(2)} s`, `< ${GOAL} s`, longest < GOAL)
  row('all workers of both strategies [s]', all.toFixed(2))
  const ratio = savings()
  goal('ended when lost / run to the end', ratio.toFixed(2), `≤ ${GOAL_RATIO}`, ratio <= GOAL_RATIO)
}

/** Over values of parameters that do not save the opening preset's crushed part. */
function savings(): number {
  const strategy = 'threshold-stop'
  const vain = [...rescues(scenario, strategy, run)].flatMap(({ rescue: { path, value, tried } }) =>
    value === null ? tried.map((each) => editScenario(scenario, [{ path, value: each.value }])) : [],
  )
  const scenarios = vain.flatMap((checked) => (checked.ok ? [checked.scenario] : []))
  const time = (untilLost: boolean) =>
    processorTime(() => {
      for (const each of scenarios) run(each, strategy, { untilLost })
    })
  const ratios: number[] = []
  for (let round = -2; round < ROUNDS; round++) {
    const cut = time(true)
    const whole = time(false)
    if (round >= 0) ratios.push(cut / whole)
  }
  return median(ratios)
}
