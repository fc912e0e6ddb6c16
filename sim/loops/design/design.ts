/** What a gain design hands out: gains as edits of the scenario, with the formula, its source and the figures that went in. */
import type { Edit } from '../../scenario/index.ts'
import type { LoopId } from '../model.ts'

export interface Figure {
  label: string
  value: number
  unit: string
}

export interface GainDesign {
  loop: LoopId
  method: string
  label: string
  formula: string
  source: string
  figures: Figure[]
  /** Empty where the method gives no gains for this axis; `note` says why. */
  edits: Edit[]
  note: string
  /** What the method cannot give of the wish, so that the gains are its nearest ones; null if it gives it. */
  short: Shortfall | null
}

export type Shortfall =
  /** Wanted bandwidth, and the fastest that the lags leave to the method [rad/s]. */
  | { kind: 'too fast'; wanted: number; fastest: number }
  /** A damping gain would have to be negative: the axis' own friction damps more than is wanted. */
  | { kind: 'friction' }

/** What the engineer asks for; each has a default that follows from the axis. */
export interface Wanted {
  /** [rad/s] */
  bandwidth?: number | undefined
  /** Damping ratio of the dominant pair of poles. */
  damping?: number | undefined
  /** Largest peak sensitivity at any stiffness of the part. */
  peakSensitivity?: number | undefined
  /** Whether the force loop has an integral; as the scenario has it if left out. */
  integral?: boolean | undefined
}

/** Four digits: finer gains mean nothing on an axis known to a percent, and read badly. */
export const tidy = (value: number) => Number(value.toPrecision(4))
