/** Charts on one axis share what is shown of it, the second cursor, and one read-out. */
import { create, type StoreApi, type UseBoundStore } from 'zustand'
import type { ChartContent } from './types.ts'

export type Range = [number, number]

/** Part of a chart in coordinates in which it is even; `y` left out: as it is. */
export interface View {
  x: Range
  y?: Range
}

/** What a chart says at its cursors. */
export interface Reading {
  title: string
  unit: string
  lines: { label: string; at(cursor: number): number | null }[]
}

/** A chart as hands, keys and read-out see it. Places in px of the window; a cursor is a value of the axis. */
export interface Surface {
  element: HTMLElement
  group: ChartGroup
  /** Where its curves are drawn. */
  area(): Pick<DOMRect, 'left' | 'top' | 'width' | 'height'>
  /** How far one can look, and what is shown. */
  bounds(): View
  shown(): Required<View>
  /** Null: as it was at first. */
  show(view: View | null): void
  /** Both directions are zoomed alike. */
  even?: boolean
  /** The cursor at a place; the place of a cursor's line, NaN where it has none. */
  pick(clientX: number, clientY: number): number
  placeOf(cursor: number): number
  cursor(): number | null
  setCursor(cursor: number): void
  /** Of the axis: `figure` of a value, and `difference` of two. */
  axis: { title: string; figure(value: number): string; difference(from: number, to: number): string }
  read(): Reading
}

interface Shared {
  /** Shown part of the axis; null: all of it. */
  window: Range | null
  /** The second cursor; null: none. */
  mark: number | null
  /** The first one, as its charts show it. */
  cursor: number | null
  /** What was last done, for those who do not see it. */
  told: string
}

export interface ChartGroup {
  use: UseBoundStore<StoreApi<Shared>>
  /** From top to bottom. */
  surfaces: Surface[]
}

const groups = new Map<string, ChartGroup>()

export function groupOf(key: string): ChartGroup {
  let group = groups.get(key)
  if (!group) {
    group = { use: create<Shared>()(() => ({ window: null, mark: null, cursor: null, told: '' })), surfaces: [] }
    groups.set(key, group)
  }
  return group
}

/** All charts of the group as they were at first. */
export const showWhole = ({ surfaces }: ChartGroup) => {
  for (const surface of surfaces) surface.show(null)
}

/** What is shown of an axis: the part asked for, as far as there is such a part of it. */
export function within(window: Range, [from, to]: Range): Range {
  if (window[0] >= to || window[1] <= from) return [from, to]
  return [Math.max(from, window[0]), Math.min(to, window[1])]
}

/** Moves the shown part so that a cursor that has been stepped out of it is seen. */
export function follow({ use }: ChartGroup, cursor: number, { xRange, lens }: Pick<ChartContent, 'xRange' | 'lens'>) {
  if (cursor >= xRange[0] && cursor <= xRange[1]) return
  const [from, end] = xRange.map((x) => lens.toDisplay(x)) as Range
  const by = lens.toDisplay(cursor) - (cursor < xRange[0] ? from : end)
  use.setState({ window: [lens.toTime(from + by), lens.toTime(end + by)] })
}
