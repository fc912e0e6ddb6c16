/** Size of a lane's picture: side by side where each is still wide enough to read, else one under the other. */
export interface LaneSize {
  columns: number
  width: number
  height: number
}

/** Least width of a picture beside another, gap between them [px]. */
const NARROWEST = 300
const GAP = 16
/** Height over width of a picture that stands beside others; alone in its row it is flatter. */
const TALL = 0.78
const FLAT = 0.42
const LOWEST = 210
const HIGHEST = 420

export function laneSize(width: number, lanes: number): LaneSize {
  const beside = Math.floor((width - GAP * (lanes - 1)) / Math.max(1, lanes))
  const columns = lanes > 1 && beside >= NARROWEST ? lanes : 1
  const each = columns > 1 ? beside : width
  const ratio = each < 520 ? TALL : FLAT
  return { columns, width: each, height: Math.round(Math.min(HIGHEST, Math.max(LOWEST, each * ratio))) }
}
