/** What happens when: the instants of a run that the time bar marks and the jump buttons go to. */
import { STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'

export type MomentKind =
  | 'contact'
  | 'engaged'
  | 'peak'
  | 'mark'
  | 'crack'
  | 'slip'
  | 'loose'
  | 'drop'
  | 'jam'
  | 'strip'
  | 'sag'
  | 'tear'
  | 'unstable'

export const MOMENT_WORDS: Record<MomentKind, string> = {
  contact: 'contact',
  engaged: 'takes over',
  peak: 'peak',
  mark: 'is marked',
  crack: 'cracks',
  slip: 'slides',
  loose: 'comes loose',
  drop: 'drops',
  jam: 'jams',
  strip: 'strips',
  sag: 'goes slack',
  tear: 'tears',
  unstable: 'off its rails',
}

export interface Moment {
  kind: MomentKind
  /** [s] */
  time: number
}

/** What other jobs than gripping have. */
type OtherTime = 'peakTorqueTime' | 'mostTensionTime' | 'jam' | 'strip' | 'under' | 'torn'

/** Instants of one run in the order in which they came. */
export function momentsOf({ result }: Pick<RunView, 'result'>): Moment[] {
  if (!result) return []
  const { events, metrics } = result
  const other = { ...events, ...metrics } as Partial<Record<OtherTime, number | null>>
  // Another job has other events: those that it does not know did not happen.
  const times: Record<MomentKind, number | null | undefined> = {
    contact: metrics.contactTime,
    engaged: events.engaged,
    peak: metrics.peakForceTime ?? other.peakTorqueTime ?? other.mostTensionTime,
    mark: events.mark,
    crack: events.crack,
    slip: events.slip,
    loose: events.loose,
    drop: events.drop,
    jam: other.jam,
    strip: other.strip,
    sag: other.under,
    tear: other.torn,
    unstable: events.unstable,
  }
  return (Object.keys(times) as MomentKind[])
    .flatMap((kind) => {
      const time = times[kind] ?? null
      return time === null ? [] : [{ kind, time }]
    })
    .sort((a, b) => a.time - b.time)
}

export interface Jump {
  id: string
  label: string
  /** Instants to go to, in order, without doubles [s]. */
  times: number[]
}

/** Where one can jump: contact, take-over and peak of every strategy, arm moves, and what went wrong. */
export function jumpsOf(runs: RunView[]): Jump[] {
  const all = runs.flatMap((run) => momentsOf(run))
  const of = (...kinds: MomentKind[]) => all.filter(({ kind }) => kinds.includes(kind)).map(({ time }) => time)
  const moves = runs.flatMap(({ scenario }) => scenario.arm.moves.map(({ start }) => start))
  const jumps = [
    { id: 'contact', label: 'Contact', times: of('contact') },
    { id: 'engaged', label: 'Takes over', times: of('engaged') },
    { id: 'peak', label: 'Peak', times: of('peak') },
    { id: 'arm', label: 'Arm move', times: moves },
    {
      id: 'loss',
      label: 'Damage or loss',
      times: of('mark', 'crack', 'slip', 'loose', 'drop', 'jam', 'strip', 'sag', 'tear', 'unstable'),
    },
  ]
  return jumps.map((jump) => ({ ...jump, times: [...new Set(jump.times)].sort((a, b) => a - b) }))
}

/** The next of the times after `now`, else the first. */
export const nextOf = (times: number[], now: number): number | undefined =>
  times.find((time) => time > now + 1e-9) ?? times[0]

/** Time before the first contact at which the play begins, and before a drop at which the picture first stands [s]. */
const LEAD = 0.1
const BEFORE_DROP = 0.01

/** Where the play begins, and where the picture of finished runs first stands: at the end, but with every part in its jaws. */
export function playSpan(runs: Pick<RunView, 'result'>[], duration: number): { start: number; rest: number } {
  const all = runs.flatMap(({ result }) => result ?? [])
  const contacts = all.flatMap(({ metrics }) => metrics.contactTime ?? [])
  const drops = all.flatMap(({ events }) => events.drop ?? [])
  const rest = Math.min(duration, ...drops.map((drop) => Math.max(0, drop - BEFORE_DROP)))
  return { start: contacts.length > 0 ? Math.max(0, Math.min(...contacts) - LEAD) : 0, rest }
}

/** Line style of a strategy, as in the traces, so that colour is never the only sign. */
export const lineStyleOf = (strategy: StrategyId): string | undefined =>
  STRATEGIES.find(({ id }) => id === strategy)?.look.dash.join(' ') || undefined

/** What a run is called: by its strategy, unless it has a look of its own. */
export const nameOf = ({ strategy, look }: Pick<RunView, 'strategy' | 'look'>): string =>
  look?.name ?? STRATEGIES.find(({ id }) => id === strategy)?.label ?? strategy

export const dashOf = ({ strategy, look }: Pick<RunView, 'strategy' | 'look'>): string | undefined =>
  look ? look.dash : lineStyleOf(strategy)
