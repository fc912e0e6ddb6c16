/**
 * What a part of a study costs of the processor beside a bare grip of the scenario as it stands, on the same compiled core, taking turns:
 * how many runs it takes, and what drawing it and compiling its model add.
 */
import { runnerOn } from '../../sim/ask/runner.ts'
import { drawing } from '../../sim/ask/spread/draw.ts'
import { outcomeOf } from '../../sim/ask/spread/outcome.ts'
import { usualSpreads } from '../../sim/ask/spread/usual.ts'
import { core } from '../../sim/cli/core.ts'
import { judgeGrip, PRESETS, type Scenario, STRATEGIES, strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { processorTime } from './clock.ts'
import { goal, row } from './report.ts'
import { median } from './stats.ts'

/** Parts, enough that their mean is that of the study to a few per cent. */
const PARTS = 60
/** Of a grip without draw, model and judgement. */
const RATIO = 1.15

export function part(): void {
  const { scenario } = PRESETS[0]!
  const varies = usualSpreads(scenario).map(({ varied }) => varied)
  const draw = drawing({ ...scenario, spread: { varies, together: [] } }, { sampling: 'sobol', seed: 1 })
  const parts = Array.from({ length: PARTS }, (_, index) => draw(index))
  row('draw of a part', `${((1e3 * processorTime(() => times(20, () => parts.map(({ index }) => draw(index))))) / 20 / PARTS).toFixed(3)} ms`)
  let runs = 0
  const counted = { lay: (...given: Parameters<typeof core.lay>) => (runs++, core.lay(...given)) }
  const run = runnerOn(counted)
  for (const { id } of STRATEGIES) {
    for (const { scenario: own } of parts.slice(0, 5)) judgeGrip(own, id, { core })
    const model = (own: Scenario) => modelOf(own, strategyOf(id))
    row(`${id}: model`, `${((1e3 * processorTime(() => times(20, () => parts.map(({ scenario: own }) => model(own))))) / 20 / PARTS).toFixed(3)} ms`)
    const steps = parts.map(({ scenario: own }) => model(own).bench.axis.steps)
    row(`${id}: steps a sample, as it stands; of parts`, `${model(scenario).bench.axis.steps}; ${Math.min(...steps)} to ${Math.max(...steps)}`)
    runs = 0
    const rounds = parts.map((each) => {
      const bare = processorTime(() => bareGrip(scenario, id))
      const whole = processorTime(() => outcomeOf(each, id, run))
      return { bare: 1e3 * bare, whole: 1e3 * whole }
    })
    const [bare, whole] = [median(rounds.map((each) => each.bare)), median(rounds.map((each) => each.whole))]
    const mean = rounds.reduce((sum, each) => sum + each.whole, 0) / PARTS
    row(`${id}: bare grip, part (median, mean)`, `${bare.toFixed(1)}, ${whole.toFixed(1)}, ${mean.toFixed(1)} ms`)
    goal(`${id}: runs a part`, (runs / PARTS).toFixed(2), '= 1', runs === PARTS)
    goal(`${id}: part / bare grip`, (whole / bare).toFixed(2), `<= ${RATIO}`, whole / bare <= RATIO)
  }
}

function bareGrip(scenario: Scenario, id: (typeof STRATEGIES)[number]['id']): void {
  const model = modelOf(scenario, strategyOf(id))
  model.bench.figuring = 1
  const running = core.lay(model)
  running.begin(model.samples)
  running.advance(model.samples)
}

function times(count: number, call: () => unknown): void {
  for (let n = 0; n < count; n++) call()
}
