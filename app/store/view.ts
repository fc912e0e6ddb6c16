/** How the person looks at it: units, theme, cursor and what is shown. */
import { create } from 'zustand'
import { type Channel, STRATEGIES, type StrategyId } from '../../sim/index.ts'

export interface ViewState {
  /** Id of the view that is open. */
  view: string
  /** Place in the customer view, counted from 0. */
  slide: number
  units: 'si' | 'us'
  theme: 'light' | 'dark' | 'system'
  /** Cursor shared by picture and charts [s]. */
  time: number
  playing: boolean
  /** Whether the play is slowed around contact and arm move. */
  lens: boolean
  /** Whether the axes of time are stretched there too; a stretched axis bends slopes. */
  bent: boolean
  /** Strategies that are run and shown. */
  shown: StrategyId[]
  /** Channels that have a chart. */
  charts: Channel[]
  /** What figures are compared with: the run before the present change, or a pinned run by its id. */
  against: string
  /** The bench's own runs wait, because another view needs the machine. */
  resting: boolean
  set(partial: Partial<Omit<ViewState, 'set'>>): void
}

export const useView = create<ViewState>()((set) => ({
  view: 'bench',
  slide: 0,
  units: 'si',
  theme: 'system',
  time: 0,
  playing: false,
  lens: true,
  bent: false,
  shown: STRATEGIES.map((strategy) => strategy.id),
  charts: ['force', 'current', 'travel', 'sag'],
  against: 'ghost',
  resting: false,
  set: (partial) => set(partial),
}))
