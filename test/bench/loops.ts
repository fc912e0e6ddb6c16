/**
 * Four loops at four working points with all curves and step responses, as the page asks for while a slider moves. Told in the
 * time of the processor, which a busy machine does not lengthen as it does that of the clock.
 */
import { analyseLoops, PRESETS } from '../../sim/index.ts'
import { goal, row, summary } from './report.ts'
import { median } from './stats.ts'

/** One frame at 60 pictures a second [ms]. */
const GOAL = 16
const WARM_UP = 60
const BATCHES = 20
/** Analyses in a batch: the processor's clock ticks too coarsely for one. */
const BATCH = 10

export function loops(): void {
  for (const { id, scenario } of PRESETS) {
    let sink = 0
    const run = () => {
      sink += analyseLoops(scenario, { curves: true }).loops[0]!.curves!.magnitude[0]!
    }
    for (let n = 0; n < WARM_UP; n++) run()
    const times: number[] = []
    for (let n = 0; n < BATCHES; n++) {
      const start = process.cpuUsage()
      for (let k = 0; k < BATCH; k++) run()
      const { user, system } = process.cpuUsage(start)
      times.push((user + system) / 1000 / BATCH)
    }
    if (!Number.isFinite(sink)) throw new Error(`${id}: the curves are not finite`)
    row(id, `${summary(times, 2)} ms of processor time`)
    goal(`${id}, median`, `${median(times).toFixed(1)} ms`, `< ${GOAL} ms`, median(times) < GOAL)
  }
}
