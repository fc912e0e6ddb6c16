/** Lines of equal value over an even grid, and its value between the lines of the grid. */

/** Values by row of y; NaN where there is none. */
export interface Field {
  columns: number
  rows: number
  values: Float64Array
}

const at = ({ columns, values }: Field, column: number, row: number) => values[row * columns + column]!

/** Between four values, by straight lines along both axes; `x` and `y` count columns and rows. NaN where one is missing. */
export function valueAt(field: Field, x: number, y: number): number {
  const column = Math.min(Math.floor(x), field.columns - 2)
  const row = Math.min(Math.floor(y), field.rows - 2)
  const [a, b] = [x - column, y - row]
  const low = at(field, column, row) * (1 - a) + at(field, column + 1, row) * a
  const high = at(field, column, row + 1) * (1 - a) + at(field, column + 1, row + 1) * a
  return low * (1 - b) + high * b
}

/** Some even values between the least and the greatest, by 1, 2 or 5 times a power of ten. */
export function levelsOf(low: number, high: number, count: number): number[] {
  const raw = (high - low) / count
  if (!(raw > 0) || !Number.isFinite(raw)) return []
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = power * ([1, 2, 5, 10].find((each) => each * power >= raw * (1 - 1e-9)) ?? 10)
  const first = Math.floor(low / step) + 1
  return Array.from({ length: Math.ceil(high / step) - first }, (_, n) => (first + n) * step)
}

type Place = [number, number]

/** Straight pieces of the line on which the field has a level, in columns and rows; each cell is cut as its two triangles. */
export function contour(field: Field, level: number): [Place, Place][] {
  const pieces: [Place, Place][] = []
  for (let row = 0; row + 1 < field.rows; row++)
    for (let column = 0; column + 1 < field.columns; column++) {
      const corner = (dx: number, dy: number) => ({
        place: [column + dx, row + dy] as Place,
        value: at(field, column + dx, row + dy),
      })
      const [a, b, c, d] = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)]
      for (const triangle of [
        [a, b, c],
        [a, c, d],
      ]) {
        const crossed = crossings(triangle, level)
        if (crossed.length === 2) pieces.push([crossed[0]!, crossed[1]!])
      }
    }
  return pieces
}

function crossings(triangle: { place: Place; value: number }[], level: number): Place[] {
  return triangle.flatMap((from, n) => {
    const to = triangle[(n + 1) % 3]!
    if (from.value < level === to.value < level || Number.isNaN(from.value + to.value)) return []
    const share = (level - from.value) / (to.value - from.value)
    return [[0, 1].map((k) => from.place[k]! + share * (to.place[k]! - from.place[k]!)) as Place]
  })
}
