/** The setting that holds most, from which of the same parts each setting holds. */
import { exactInterval, type Interval, shareInterval } from './intervals.ts'
import { type Sampling, SCRAMBLINGS, scramblingOf } from './points.ts'

export interface Tried {
  setting: number
  /** By sample 0, 1, 2 …, the same parts at every setting: 1 held, 0 not. */
  held: ArrayLike<number>
}

export interface Point extends Interval {
  setting: number
  share: number
  /** Significantly fewer of the same parts than at the best setting (95 %, two-sided). */
  less: boolean
}

export interface Best extends Point {
  /** By setting. Each share has its own 95 % limits, as if the others had not been tried; the highest of many is a little lucky. */
  curve: Point[]
  /** The setting may drift so far on either side without a tried one being significantly less. */
  drift: Interval
  /** An end of what was tried, not of what holds. */
  open: { low: boolean; high: boolean }
}

/**
 * Of at least one setting tried on the same number of parts. Among settings that hold the same, the best is the middle one of the widest
 * run. Settings are compared part by part, by those that only one of the two holds (McNemar 1947, exact): as parts are the same, it takes
 * fewer of them to tell two settings apart than to tell their shares. Throws a RangeError where the parts are not as many.
 */
export function bestOf(sampling: Sampling, tried: readonly Tried[]): Best {
  const settings = [...tried].sort((one, other) => one.setting - other.setting)
  const size = settings[0]?.held.length ?? 0
  if (size === 0 || settings.some(({ held }) => held.length !== size)) {
    throw new RangeError('Settings are compared on the same parts, one at least.')
  }
  const counts = settings.map(({ held }) => Array.from(held).reduce((sum, each) => sum + each, 0))
  const place = middleOfBest(counts)
  const curve = settings.map(
    ({ setting, held }, k): Point => ({
      setting,
      share: counts[k]! / size,
      ...limitsOf(sampling, held),
      less: isLess(held, settings[place]!.held),
    }),
  )
  let [low, high] = [place, place]
  while (low > 0 && !curve[low - 1]!.less) low--
  while (high < curve.length - 1 && !curve[high + 1]!.less) high++
  return {
    ...curve[place]!,
    curve,
    drift: { low: curve[low]!.setting, high: curve[high]!.setting },
    open: { low: low === 0, high: high === curve.length - 1 },
  }
}

/**
 * Settings to try next, so that the best one and the ends of its drift are known to `step`: the middles of the gaps about them that are
 * wider. None: it is known. Begin with some ten settings over the whole range; what lies between two of those that hold little is not
 * looked at again.
 */
export function nextSettings({ curve, setting, drift }: Best, step: number): number[] {
  const place = (at: number) => curve.findIndex((point) => point.setting === at)
  const [low, best, high] = [drift.low, setting, drift.high].map(place) as [number, number, number]
  const gaps = [low - 1, best - 1, best, high].filter((k) => k >= 0 && k + 1 < curve.length)
  return [...new Set(gaps)]
    .map((k) => [curve[k]!.setting, curve[k + 1]!.setting] as const)
    .filter(([from, to]) => to - from > step * (1 + 1e-9))
    .map(([from, to]) => (from + to) / 2)
}

/** The middle of the longest run of neighbours that hold most. */
function middleOfBest(counts: readonly number[]): number {
  const most = Math.max(...counts)
  let [from, length] = [0, 0]
  for (let start = 0; start < counts.length; start++) {
    if (counts[start] !== most) continue
    let end = start
    while (counts[end + 1] === most) end++
    if (end - start + 1 > length) [from, length] = [start, end - start + 1]
    start = end
  }
  return from + Math.floor((length - 1) / 2)
}

function limitsOf(sampling: Sampling, held: ArrayLike<number>): Interval {
  const counts = new Array<number>(SCRAMBLINGS).fill(0)
  const sizes = new Array<number>(SCRAMBLINGS).fill(0)
  for (let k = 0; k < held.length; k++) {
    counts[scramblingOf(k)]! += held[k]!
    sizes[scramblingOf(k)]!++
  }
  return shareInterval(sampling, counts, sizes)
}

/** Of the parts that only one of the two holds, the other one's share is surely below a half. */
function isLess(held: ArrayLike<number>, best: ArrayLike<number>): boolean {
  let [own, others] = [0, 0]
  for (let k = 0; k < held.length; k++) {
    if (held[k]! > best[k]!) own++
    else if (held[k]! < best[k]!) others++
  }
  return own + others > 0 && exactInterval(own, own + others).high < 0.5
}
