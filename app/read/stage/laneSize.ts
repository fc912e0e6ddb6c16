/** Size of a lane's picture: side by side where each is still wide enough to read, else one under the other. */
export interface Size {
  width: number
  height: number
}

export interface LaneSizes {
  columns: number
  each: Size
  /** Of a lane that has a row of its own. */
  alone: Size
}

/** Least width of a picture beside another, gap between them [px]. */
const NARROWEST = 225
const GAP = 16
/** Height over width: a picture beside others, or on a narrow page, is taller than one alone in its row. */
const TALL = 0.8
const FLAT = 0.42
const NARROW = 280
const WIDE = 720
const LOWEST = 180
const HIGHEST = 430

export function laneSizes(width: number, lanes: number): LaneSizes {
  const beside = Math.floor((width - GAP * (lanes - 1)) / Math.max(1, lanes))
  const columns = lanes > 1 && beside >= NARROWEST ? lanes : 1
  return { columns, each: sized(columns > 1 ? beside : width), alone: sized(width) }
}

function sized(width: number): Size {
  const ratio = FLAT + (TALL - FLAT) * Math.min(1, Math.max(0, 1 - (width - NARROW) / (WIDE - NARROW)))
  return { width, height: Math.round(Math.min(HIGHEST, Math.max(LOWEST, width * ratio))) }
}
