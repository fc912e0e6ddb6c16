/** Round times for an axis that a lens may stretch. */
import type { TimeMap } from './types.ts'

/**
 * Times whose places lie at least `space` apart: multiples of 1, 0.5, 0.1, 0.05, … s, each step wherever both its neighbours are
 * far enough. As every step is a multiple of the next, times of different steps cannot come too close. `width` is the length
 * of the axis, in the unit of `space`. Sorted.
 */
export function roundTimes(from: number, to: number, lens: TimeMap, width: number, space: number): number[] {
  const start = lens.toDisplay(from)
  const scale = width / (lens.toDisplay(to) - start)
  if (!(scale > 0) || !Number.isFinite(scale)) return []
  const place = (time: number) => (lens.toDisplay(time) - start) * scale
  const times = new Set<number>()
  for (const step of steps(to - from)) {
    let widest = 0
    let before = Number.POSITIVE_INFINITY
    for (let n = Math.ceil(from / step - 1e-9); n * step <= to + step * 1e-9; n++) {
      const after = (n + 1) * step <= to ? place((n + 1) * step) - place(n * step) : Number.POSITIVE_INFINITY
      if (before >= space && after >= space) times.add(Number((n * step).toPrecision(9)))
      if (after < Number.POSITIVE_INFINITY) widest = Math.max(widest, after)
      before = after
    }
    if (widest > 0 && widest < space) break
  }
  return [...times].sort((a, b) => a - b)
}

/** From the span's own power of ten down by halves and fifths, to a few thousandths of it. */
function steps(span: number): number[] {
  const top = Math.ceil(Math.log10(span))
  return [0, 1, 2, 3].flatMap((down) => [10 ** (top - down), 10 ** (top - down) / 2])
}

/** Times as text: all with the decimals of the finest, up to two; beyond that each with its own. */
export function timeTexts(times: number[]): string[] {
  const texts = times.map((time) => String(Number(time.toFixed(6))))
  const decimals = Math.max(0, ...texts.map((text) => text.split('.')[1]?.length ?? 0))
  return decimals > 2 ? texts : times.map((time) => time.toFixed(decimals))
}
