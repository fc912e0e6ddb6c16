/** Round times for an axis that a lens may stretch. */
import type { TimeLens } from './types.ts'

/** Most round numbers that one step size may put forward, so that a long run stays quick. */
const MOST = 4000

/**
 * Times whose places lie at least `space` apart; coarse round numbers are placed first, finer ones where the lens leaves room.
 * `width` is the length of the axis, in the unit of `space`. Sorted.
 */
export function roundTimes(from: number, to: number, lens: TimeLens, width: number, space: number): number[] {
  const start = lens.toDisplay(from)
  const scale = width / (lens.toDisplay(to) - start)
  if (!(scale > 0) || !Number.isFinite(scale)) return []
  const taken: { time: number; place: number }[] = []
  for (const step of steps(to - from)) {
    if ((to - from) / step > MOST) break
    for (let n = Math.ceil(from / step - 1e-9); n * step <= to + step * 1e-9; n++) {
      const time = Number((n * step).toPrecision(9))
      const place = (lens.toDisplay(time) - start) * scale
      if (taken.every((tick) => Math.abs(tick.place - place) >= space)) taken.push({ time, place })
    }
  }
  return taken.map((tick) => tick.time).sort((a, b) => a - b)
}

function steps(span: number): number[] {
  const top = Math.floor(Math.log10(span))
  return Array.from({ length: 5 }, (_, down) => 10 ** (top - down)).flatMap((unit) => [unit, unit / 2, unit / 5])
}

/** Only as many decimals as the figure needs. */
export const timeText = (time: number) => String(Number(time.toFixed(6)))
