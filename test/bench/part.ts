/**
 * What a part of a study costs of the processor beside a bare grip of the scenario as it stands, on the same compiled core, taking turns:
 * how many runs it takes, and what drawing it, compiling its model and judging it add.
 */
import { runnerOn } from '../../sim/ask/runner.ts'
import { drawing } from '../../sim/ask/spread/draw.ts'
import { outcomeOf } from '../../sim/ask/spread/outcome.ts'
import { usualSpreads } from '../../sim/ask/spread/usual.ts'
import { core } from '../../sim/cli/core.ts'
import { judgeGrip, PRESETS, type Scenario, STRATEGIES, type StrategyId, strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { processorTime } from './clock.ts'
import { goal, row } from './report.ts'
import { median } from './stats.ts'

/** Parts, enough that their mean is that of the study to a few per cent, and how often they are drawn and compiled to be timed. */
const PARTS = 60
const TIMES = 20
/** Of the median part; its grips are other ones than the bare one, so not all of it is overhead. */
const RATIO = 1.15

export function part(): void {
  const { scenario } = PRESETS[0]!
  const varies = usualSpreads(scenario).map(({ varied }) => varied)
  const draw = drawing({ ...scenario, spread: { varies, together: [] } }, { sampling: 'sobol', seed: 1 })
  const scenarios = Array.from({ length: PARTS }, (_, index) => draw(index).scenario)
  const each = (what: (index: number) => unknown) => {
    const all = () => scenarios.map((_, index) => what(index))
    all()
    const milliseconds = 1e3 * processorTime(() => Array.from({ length: TIMES }, all))
    return `${(milliseconds / TIMES / PARTS).toFixed(3)} ms`
  }
  row('drawing a part', each(draw))
  row(
    'compiling its model',
    each((index) => modelOf(scenarios[index]!, strategyOf('current-clamp'))),
  )
  for (const { id } of STRATEGIES) compare(id, scenario, scenarios)
}

function compare(id: StrategyId, scenario: Scenario, scenarios: Scenario[]): void {
  let runs = 0
  const run = runnerOn({
    lay(model) {
      runs++
      return core.lay(model)
    },
  })
  for (const own of scenarios.slice(0, 5)) judgeGrip(own, id, { core })
  const bare = bareGrip(scenario, id)
  const rounds = scenarios.map((own) => ({
    bare: 1e3 * processorTime(bare),
    whole: 1e3 * processorTime(() => outcomeOf({ scenario: own, faults: [] }, id, run)),
  }))
  const of = (key: 'bare' | 'whole') => median(rounds.map((round) => round[key]))
  row(`${id}: bare grip, part`, `${of('bare').toFixed(1)} ms, ${of('whole').toFixed(1)} ms`)
  goal('  runs a part', (runs / scenarios.length).toFixed(2), '= 1', runs === scenarios.length)
  const ratio = of('whole') / of('bare')
  goal('  part / bare grip', ratio.toFixed(2), `<= ${RATIO}`, ratio <= RATIO)
}

/** The steps alone: a model that stands is laid down and advanced to its end. */
function bareGrip(scenario: Scenario, id: StrategyId): () => void {
  const model = modelOf(scenario, strategyOf(id))
  model.bench.figuring = 1
  return () => {
    const running = core.lay(model)
    running.begin(model.samples)
    running.advance(model.samples)
  }
}
