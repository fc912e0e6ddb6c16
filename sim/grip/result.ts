/** What a run hands out: verdict, figures, events and traces. SI units. */
import type { StrategyId } from '../strategy/strategy.ts'

export const VERDICTS = ['held', 'slipped', 'dropped', 'marked', 'crushed', 'missed', 'unstable'] as const
export type Verdict = (typeof VERDICTS)[number]

/** Headline figures of one grip. A figure that does not exist is null, never 0. */
export interface Metrics {
  /** First touch [s]. */
  contactTime: number | null
  /** Speed of the jaw at first touch [m/s]. */
  contactSpeed: number | null
  /** From first touch until the force stays within 5 % of the settled force [s]. */
  gripTime: number | null
  /** Highest force at either contact [N], and when [s]. */
  peakForce: number | null
  peakForceTime: number | null
  /** Mean force of the two contacts over the last 50 ms before the first arm move or power loss, else of the run [N]. */
  settledForce: number | null
  /** Lowest and highest force at either contact while the arm moves [N]. */
  minForceInMove: number | null
  maxForceInMove: number | null
  /** Least normal force at one contact that holds the part, at the worst instant [N]. */
  requiredForce: number | null
  /** Least of (what friction can hold) / (what is required), minus 1. */
  holdMargin: number | null
  /** Distance that the part slid in the pads [m]. */
  slipDistance: number | null
  /** (Least damage limit) / (peak force), minus 1. */
  damageMargin: number | null
  /** Mean current in the settled window, highest and rms current of the run [A]. */
  settledCurrent: number | null
  peakCurrent: number | null
  rmsCurrent: number | null
  /** Highest winding temperature [°C]. */
  windingTemperature: number | null
  /** Rms of the force about its mean in the settled window [N]. */
  forceRipple: number | null
  /** Sign changes of the motor-side speed for each second of the settled window [1/s]. */
  reversals: number | null
  /** Electrical cycles by which a step motor in open loop fell behind its field at the end of that window; null: closed loop. */
  lostCycles: number | null
  /** Width of the part at first touch as the jaws see it [m], and force over further closing of their gap [N/m]. */
  seenWidth: number | null
  seenStiffness: number | null
  /** Travel of a jaw at the end of the settled window [m]. */
  jawTravel: number | null
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
  { id: 'current', label: 'current', unit: 'A' },
  { id: 'command', label: 'current command', unit: 'A' },
  { id: 'voltage', label: 'voltage', unit: 'V' },
  { id: 'travel', label: 'jaw travel', unit: 'm' },
  { id: 'target', label: 'profile', unit: 'm' },
  { id: 'motorTravel', label: 'motor-side travel', unit: 'm' },
  { id: 'speed', label: 'jaw speed', unit: 'm/s' },
  { id: 'partShift', label: 'part shift along the grip', unit: 'm' },
  { id: 'sag', label: 'part sag', unit: 'm' },
  { id: 'drift', label: 'part drift sideways', unit: 'm' },
  { id: 'dent', label: 'dent', unit: 'm' },
  { id: 'temperature', label: 'winding temperature', unit: '°C' },
  { id: 'gauge', label: 'gauge reading', unit: 'N' },
  { id: 'wantedSpeed', label: 'wanted speed', unit: 'm/s' },
] as const

export type Channel = (typeof CHANNELS)[number]['id']
export type Traces = Record<Channel, Float64Array>
