/** Where a log meets something, and how the effort rises from there. */
import { startOf } from './align.ts'
import { type Measured, wholeColumn } from './measured.ts'
import type { ReplaySetup } from './replay.ts'

/** Row of first touch; the number of rows where there is none. */
export function touchOf({ measured }: { measured: Measured }): number {
  const force = wholeColumn(measured, 'force')
  const row = force ? startOf(force) : -1
  return row < 0 ? measured.time.length : row
}

export const highest = (values: Float64Array) => values.reduce((most, each) => Math.max(most, Math.abs(each)), 0)

/** Travel of the output [m or rad] and effort [N or N·m] from the row of first touch to that of the highest effort; null: they do not rise. */
export interface Rise {
  travel: Float64Array
  effort: Float64Array
}

export function riseOf({ measured, setup }: { measured: Measured; setup: ReplaySetup }): Rise | null {
  const effort = wholeColumn(measured, 'force')
  const position = wholeColumn(measured, 'travel') ?? wholeColumn(measured, 'motorTravel')
  if (!effort || !position) return null
  const touch = touchOf({ measured })
  const most = effort.indexOf(highest(effort))
  if (touch >= effort.length || most <= touch || !(position[most]! > position[touch]!)) return null
  return {
    travel: position.slice(touch, most + 1).map((each) => each + setup.origin),
    effort: effort.slice(touch, most + 1),
  }
}
