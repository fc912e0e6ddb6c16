/** The real loop against the same axis flattened by hand into one function of local variables. */
import { runGrip } from '../../sim/grip/run.ts'
import { substepsOf } from '../../sim/grip/step.ts'
import { PRESETS, STRATEGIES, simulateGrip, strategyOf } from '../../sim/index.ts'
import { processorTime } from './clock.ts'
import { flatGrip } from './flat-axis.ts'
import { goal, row, summary } from './report.ts'
import { least, median } from './stats.ts'

const GOAL = 1.15
const WARM_UP = 12
const ROUNDS = 60

const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!
const clamp = strategyOf('current-clamp')
const substeps = substepsOf(scenario)
const steps = Math.round(scenario.run.duration * scenario.drive.currentRate) * substeps

/** Nanoseconds a plant step. */
const time = (run: () => unknown) => (processorTime(run) * 1e9) / steps

function compare(): void {
  const real: number[] = []
  const flattened: number[] = []
  for (let round = -WARM_UP; round < ROUNDS; round++) {
    const a = time(() => runGrip(scenario, clamp, substeps))
    const b = time(() => flatGrip(scenario, substeps))
    if (round < 0) continue
    real.push(a)
    flattened.push(b)
  }
  row(`real loop, ns a plant step (${steps} a run)`, summary(real, 1))
  row('flattened, ns a plant step', summary(flattened, 1))
  const ratio = least(real) / least(flattened)
  goal('real / flattened, of the least', ratio.toFixed(3), `≤ ${GOAL}`, ratio <= GOAL)
  row('real / flattened, of the medians', (median(real) / median(flattened)).toFixed(3))
  row(
    'real / flattened, round by round',
    summary(
      real.map((value, n) => value / flattened[n]!),
      3,
    ),
  )
}

/** A process that has seen this axis and this strategy only. */
export const flat = compare

/** A process like the page's worker after some use: every preset by every strategy has gone through the same call sites. */
export function flatAfterPresets(): void {
  for (let n = 0; n < 3; n++)
    for (const preset of PRESETS) for (const { id } of STRATEGIES) simulateGrip(preset.scenario, id)
  compare()
}
