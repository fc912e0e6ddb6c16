/** Which sections are open; remembered in the browser. */
import { create } from 'zustand'
import { pathNow, STRATEGIES } from '../../sim/index.ts'

const KEY = 'jawbench.open-sections'
const AT_FIRST = ['strategies', 'jaws.friction', 'approach', ...settingsOpen()]

interface Folds {
  open: string[]
  set(id: string, open: boolean): void
}

export const useFolds = create<Folds>()((set, get) => ({
  open: read(),
  set(id, open) {
    if (get().open.includes(id) === open) return
    const next = open ? [...get().open, id] : get().open.filter((other) => other !== id)
    set({ open: next })
    try {
      localStorage.setItem(KEY, JSON.stringify(next))
    } catch {
      // Storage may be full or forbidden; then it is not remembered.
    }
  },
}))

/** A group that moved in the format since stays as open as it was. */
function read(): string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null')
    return Array.isArray(kept) ? kept.filter((id) => typeof id === 'string').map(pathNow) : AT_FIRST
  } catch {
    return AT_FIRST
  }
}

/** The settings of strategies that anybody can try, as they need no gauge. */
function settingsOpen(): string[] {
  const groupOf = (path: string) => path.slice(0, path.lastIndexOf('.'))
  return STRATEGIES.filter(({ sensed }) => !sensed).map(({ setting }) => groupOf(setting.path))
}
