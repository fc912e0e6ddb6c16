/**
 * Why and rescue of two strategies on the opening preset, each in a process of its own as on the page in a worker of its own,
 * from cold code; and what a search saves because a run ends when the part is lost. Both told in the time of the processor.
 */

import { run } from '../../sim/cli/core.ts'
import { editScenario, explain, PRESETS, rescues, type StrategyId } from '../../sim/index.ts'
import { processorTime } from './clock.ts'
import { spawnPart } from './process.ts'
import { goal, row, summary } from './report.ts'
import { median } from './stats.ts'

/** Both strategies at a time, one a core [s]. */
const GOAL = 1.2
/** Time of the runs that do not save the part, over that of the same runs to their end. */
const GOAL_RATIO = 0.5
const PROCESSES = 3
const ROUNDS = 8

const { scenario } = PRESETS[0]!
const STRATEGIES: StrategyId[] = ['threshold-stop', 'current-clamp']

function once(strategy: StrategyId): { why: number; rescue: number; parameters: number } {
  const { verdict } = run(scenario, strategy).result
  let parameters = 0
  const why = processorTime(() => explain(scenario, strategy, verdict, run))
  const rescue = processorTime(() => {
    for (const { of } of rescues(scenario, strategy, run)) parameters = of
  })
  return { why, rescue, parameters }
}

export const RESCUE_SAMPLES: Record<string, () => void> = Object.fromEntries(
  STRATEGIES.map((strategy) => [`rescue-${strategy}`, () => console.log(JSON.stringify(once(strategy)))]),
)

export function rescue(): void {
  const totals = STRATEGIES.map((strategy) => {
    const samples: ReturnType<typeof once>[] = Array.from({ length: PROCESSES }, () =>
      JSON.parse(spawnPart(`rescue-${strategy}`, 'pipe').stdout),
    )
    row(
      `${strategy}, why [s]`,
      summary(
        samples.map((each) => each.why),
        2,
      ),
    )
    row(
      `${strategy}, rescue of ${samples[0]!.parameters} parameters [s]`,
      summary(
        samples.map((each) => each.rescue),
        2,
      ),
    )
    return median(samples.map((each) => each.why + each.rescue))
  })
  const longer = Math.max(...totals)
  goal('why and rescue, the longer of the two', `${longer.toFixed(2)} s`, `< ${GOAL} s`, longer < GOAL)
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
