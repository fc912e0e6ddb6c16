/** What a run hands out: verdict, figures, events and traces. SI units. */
import type { Bench } from '../../cycle/bench.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { GripLoad } from './load.ts'

export const VERDICTS = ['held', 'slipped', 'dropped', 'marked', 'crushed', 'missed', 'unstable'] as const
export type Verdict = (typeof VERDICTS)[number]

/** Headline figures of one grip, in the order of tables; `metrics.ts` says what each is. */
export const METRIC_IDS = [
  'contactTime',
  'contactSpeed',
  'gripTime',
  'peakForce',
  'peakForceTime',
  'settledForce',
  'minForceInMove',
  'maxForceInMove',
  'requiredForce',
  'holdMargin',
  'damageMargin',
  'slipDistance',
  'seenWidth',
  'seenStiffness',
  'settledCurrent',
  'peakCurrent',
  'rmsCurrent',
  'windingTemperature',
  'forceRipple',
  'reversals',
  'lostCycles',
  'jawTravel',
] as const

export type MetricId = (typeof METRIC_IDS)[number]

/** A figure that does not exist is null, never 0. */
export type Metrics = Record<MetricId, number | null>

/** A grip as its run has left it. */
export interface GripEnd {
  scenario: Scenario
  load: GripLoad
  sums: Bench['figures']['sums']
  /** Of the current loop [s]. */
  period: number
}

/** Times of what happened [s]; null: it did not. */
export interface GripEvents {
  lift: number | null
  /** The strategy halted its move or took over: threshold stop confirmed, clamp saturated, gauge felt contact. */
  engaged: number | null
  crack: number | null
  /** First sliding, and the part out of the jaws. */
  slip: number | null
  drop: number | null
  /** The part is free again after the jaws have opened on purpose. */
  release: number | null
  /** The run left its rails; the traces end here. */
  unstable: number | null
}

export interface GripResult {
  strategy: StrategyId
  verdict: Verdict
  /** Largest relative change of peak and settled force when the step is halved; null: not computed. */
  stepError: number | null
  metrics: Metrics
  events: GripEvents
  /** Fingerprint of the traces; equal only where two runs agree to the last bit. */
  hash: string
  /** What went wrong in an unstable run, '' else. */
  cause: '' | 'numbers' | 'travel' | 'position loop' | 'current loop'
  /** Integration step [s]. */
  step: number
}

/** One column a channel, all of the same length; a bucket of time gives two rows that keep its extremes. */
export const CHANNELS = [
  { id: 'time', label: 'time', unit: 's' },
  { id: 'force', label: 'force', unit: 'N' },
  { id: 'farForce', label: 'force at the far contact', unit: 'N' },
  { id: 'partShift', label: 'part shift along the grip', unit: 'm' },
  { id: 'sag', label: 'part sag', unit: 'm' },
  { id: 'drift', label: 'part drift sideways', unit: 'm' },
  { id: 'dent', label: 'dent', unit: 'm' },
  { id: 'current', label: 'current', unit: 'A' },
  { id: 'command', label: 'current command', unit: 'A' },
  { id: 'voltage', label: 'voltage', unit: 'V' },
  { id: 'travel', label: 'jaw travel', unit: 'm' },
  { id: 'target', label: 'profile', unit: 'm' },
  { id: 'motorTravel', label: 'motor-side travel', unit: 'm' },
  { id: 'speed', label: 'jaw speed', unit: 'm/s' },
  { id: 'temperature', label: 'winding temperature', unit: '°C' },
  { id: 'gauge', label: 'gauge reading', unit: 'N' },
  { id: 'wantedSpeed', label: 'wanted speed', unit: 'm/s' },
] as const

export type Channel = (typeof CHANNELS)[number]['id']
export type Traces = Record<Channel, Float64Array>

/** Columns of a record, in the order of CHANNELS, by name. */
export const tracesOf = (columns: Float64Array[]): Traces =>
  Object.fromEntries(CHANNELS.map(({ id }, c) => [id, columns[c] ?? new Float64Array(0)])) as Traces
