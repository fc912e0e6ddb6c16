/**
 * The real loop against the same axis flattened by hand into one function of local variables. How well the engine compiles
 * either differs from process to process, so several processes are asked; the yardstick is the flattened axis at its best.
 */

import { editScenario, PRESETS, type Scenario, STRATEGIES, simulateGrip, strategyOf } from '../../sim/index.ts'
import { substepsOf } from '../../sim/model/step.ts'
import { runGrip } from '../../sim/run/run.ts'
import { processorTime } from './clock.ts'
import { flatGrip } from './flat-axis.ts'
import { spawnPart } from './process.ts'
import { goal, row, summary } from './report.ts'
import { least, median } from './stats.ts'

const GOAL = 1.15
const PROCESSES = 5
/** Processes that are asked at most, while none of them has compiled the yardstick well. */
const MOST_PROCESSES = 20
/** Short grips before the first measurement: functions are compiled whole only after many calls, and one grip is one call. */
const SHORT_GRIPS = 400
const WARM_UP = 12
const ROUNDS = 40

const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!
const clamp = strategyOf('current-clamp')
const substeps = substepsOf(scenario)
const steps = Math.round(scenario.run.duration * scenario.drive.currentRate) * substeps

/** Nanoseconds a plant step, round by round. */
interface Times {
  real: number[]
  flattened: number[]
}

/** A process that has seen this axis and this strategy only. */
export const flat = (): void => compare('flat-sample')

/** A process like the page's worker after some use: every preset by every strategy has gone through the same call sites. */
export const flatAfterPresets = (): void => compare('flat-after-presets-sample')

/** What one of the processes does: prints its times as JSON. */
export const SAMPLES: Record<string, () => void> = {
  'flat-sample': () => console.log(JSON.stringify(measure())),
  'flat-after-presets-sample': () => {
    for (let n = 0; n < 3; n++)
      for (const preset of PRESETS) for (const { id } of STRATEGIES) simulateGrip(preset.scenario, id)
    console.log(JSON.stringify(measure()))
  },
}

function compare(sample: string): void {
  const times: Times[] = []
  let real: number[] = []
  let flattened: number[] = []
  // A yardstick slower than what it measures was compiled badly: a ratio to it would flatter.
  const flatters = () => times.length < PROCESSES || least(flattened) > least(real)
  while (flatters() && times.length < MOST_PROCESSES) {
    times.push(JSON.parse(spawnPart(sample, 'pipe').stdout))
    real = times.map((each) => least(each.real))
    flattened = times.map((each) => least(each.flattened))
  }
  row(`real loop, ns a plant step, ${times.length} processes`, summary(real, 1))
  row('flattened, ns a plant step', summary(flattened, 1))
  if (flatters()) {
    goal('the engine compiled the yardstick well', 'in no process', 'in one', false)
    return
  }
  const yardstick = least(flattened)
  const ratio = median(real) / yardstick
  goal('real, usual process / flattened at its best', ratio.toFixed(3), `≤ ${GOAL}`, ratio <= GOAL)
  row('real at its best / flattened at its best', (least(real) / yardstick).toFixed(3))
  const rounds = times.flatMap((each) => each.real.map((value, n) => value / each.flattened[n]!))
  row('round by round, within each process', summary(rounds, 3))
}

function measure(): Times {
  const short = shortGrip()
  for (let n = 0; n < SHORT_GRIPS; n++) {
    runGrip(short, clamp, substeps)
    flatGrip(short, substeps)
  }
  const time = (run: () => unknown) => (processorTime(run) * 1e9) / steps
  const times: Times = { real: [], flattened: [] }
  for (let round = -WARM_UP; round < ROUNDS; round++) {
    const a = time(() => runGrip(scenario, clamp, substeps))
    const b = time(() => flatGrip(scenario, substeps))
    if (round < 0) continue
    times.real.push(a)
    times.flattened.push(b)
  }
  return times
}

/** 20 ms of the same axis. */
function shortGrip(): Scenario {
  const checked = editScenario(scenario, [
    { path: 'run.duration', value: 0.02 },
    { path: 'arm.moves', value: [] },
    { path: 'arm.lift', value: 0.015 },
  ])
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}
