/** How far the person has come in the lessons, and which one is open. */
import { create } from 'zustand'

export interface LessonsState {
  /** Id of the open lesson; null: the first that is not done. */
  open: string | null
  /** Lessons whose question was answered right, and those that were only tried, by id. */
  done: string[]
  tried: string[]
  answered(id: string, right: boolean): void
  reset(): void
}

const withId = (ids: string[], id: string) => (ids.includes(id) ? ids : [...ids, id])

export const useLessons = create<LessonsState>()((set, get) => ({
  open: null,
  done: [],
  tried: [],
  answered: (id, right) => set(right ? { done: withId(get().done, id) } : { tried: withId(get().tried, id) }),
  reset: () => set({ done: [], tried: [] }),
}))
