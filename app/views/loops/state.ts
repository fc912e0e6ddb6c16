/** What the person has chosen on this view; it stays while other views are open. */
import { create } from 'zustand'
import type { DriveScales, LoopId, Wanted } from '../../../sim/index.ts'

interface LoopsState {
  loop: LoopId
  /** Frequency at the cursor [rad/s], and time at that of the step responses [s]. */
  cursor: number | null
  time: number | null
  wanted: Record<LoopId, Wanted>
  /** Steps of the time simulation beneath the linear ones: none, without or with dry friction; and how large, over the automatic size. */
  simulated: 'none' | 'off' | 'on'
  scale: number
  /** Scale factors that the person has entered; the others follow the scenario. */
  scales: Partial<DriveScales>
}

export const useLoopsState = create<LoopsState>()(() => ({
  loop: 'position',
  cursor: null,
  time: null,
  wanted: { current: {}, position: {}, velocity: {}, force: {} },
  simulated: 'off',
  scale: 1,
  scales: {},
}))
