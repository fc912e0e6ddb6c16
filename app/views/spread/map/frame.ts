/** Where the values of a map's two quantities lie on its drawing, and its figures on the lines of its grid. */
import { jobOf, type MapAxis, type MapGrid } from '../../../../sim/index.ts'
import type { Field } from './contours.ts'
import type { MapAnswer, Shaded } from './state.ts'

export interface Frame {
  left: number
  top: number
  width: number
  height: number
  x(value: number): number
  y(value: number): number
}

/** px: room for the figures of the axes, and the plot's height for a width. */
const ROOM = { left: 58, right: 14, top: 8, bottom: 24 }
const SHAPE = { share: 0.62, least: 220, most: 460 }

export function frameOf({ x, y }: Pick<MapAnswer, 'x' | 'y'>, wide: number): Frame {
  const { left, top } = ROOM
  const width = Math.max(1, wide - left - ROOM.right)
  const height = Math.max(SHAPE.least, Math.min(SHAPE.most, SHAPE.share * width))
  const share = ({ from, to }: MapAxis, value: number) => (value - from) / (to - from)
  return {
    left,
    top,
    width,
    height,
    x: (value) => left + width * share(x, value),
    y: (value) => top + height * (1 - share(y, value)),
  }
}

export const heightOf = (frame: Frame) => frame.top + frame.height + ROOM.bottom

type Of = Pick<MapAnswer, 'scenario' | 'grid'>

/** Of a run of the grid [SI]; NaN where there is none. */
export function figureOf({ scenario, grid }: Of, at: number, shaded: Shaded): number {
  const outcome = grid.outcomes[at]
  if (!outcome || shaded === 'none') return Number.NaN
  if (shaded === 'spare') return outcome.spare
  return outcome.figures[jobOf(scenario).figures.findIndex(({ id }) => id === shaded)]!
}

export const fieldOf = (answer: Of, shaded: Shaded): Field => ({
  columns: answer.grid.xs.length,
  rows: answer.grid.ys.length,
  values: Float64Array.from(answer.grid.outcomes, (_, at) => figureOf(answer, at, shaded)),
})

/** The grip of the grid that lies nearest to a place on the drawing. */
export function nearest(grid: MapGrid, frame: Frame, px: number, py: number): { column: number; row: number } {
  const along = (share: number, count: number) => Math.min(count - 1, Math.max(0, Math.round(share * (count - 1))))
  return {
    column: along((px - frame.left) / frame.width, grid.xs.length),
    row: along((frame.top + frame.height - py) / frame.height, grid.ys.length),
  }
}
