/** Ticks of simulated time on a bar: as fine as there is room, so that their density shows where it is stretched. */
import type { TimeLens } from '../../ui/timeLens.ts'

export interface Tick {
  /** [s] and [px] */
  time: number
  x: number
  /** 0 for the coarsest step of time, higher for finer ones. */
  level: number
  label: string | null
}

const STEPS = [100, 50, 10, 5, 1, 0.5, 0.1, 0.05, 0.01, 0.005, 0.001, 0.0005]
/** Least distance of ticks and of labels [px]. */
const APART = 5
const LABEL_APART = 40

export function ticksOf(lens: TimeLens, duration: number, width: number): Tick[] {
  const placed = new Map<string, Tick>()
  const labelled: number[] = []
  const x = (time: number) => lens.toDisplay(time) * width
  let level = -1
  for (const step of STEPS) {
    if (step > duration || duration / step > 20_000) continue
    level++
    for (let k = 0; k * step <= duration * (1 + 1e-9); k++) {
      const time = k * step
      if ((lens.rate(time) * step * width) / lens.seconds < 0.5 * APART) continue // far too narrow for any tick of this step
      const key = time.toFixed(5)
      const at = x(time)
      const room = x(time + step / 2) - x(time - step / 2)
      if (!placed.has(key) && room < APART) continue
      const tick = placed.get(key) ?? { time, x: at, level, label: null }
      if (
        tick.label === null &&
        room >= LABEL_APART && // all of a step or none: some of them would look like rounded ones of another
        labelled.every((other) => Math.abs(other - at) >= LABEL_APART)
      ) {
        tick.label = labelOf(time, step)
        labelled.push(at)
      }
      placed.set(key, tick)
    }
  }
  return [...placed.values()].sort((a, b) => a.time - b.time)
}

/** As many decimals as the step needs. */
function labelOf(time: number, step: number): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))
  return time === 0 ? '0' : time.toFixed(decimals)
}
