/** Flanks of a thread downwards along one side, as a piece of a path that begins at its root; `side` −1 left of the axis, 1 right of it. */
export function flanks(from: number, count: number, pitch: number, root: number, tooth: number, side: 1 | -1): string {
  const at = (radius: number) => (side * radius).toFixed(2)
  return Array.from({ length: count }, (_, n) => {
    const top = from + n * pitch
    const high = Math.min(0.3 * pitch, tooth)
    return `V${top.toFixed(2)}L${at(root + tooth)} ${(top + high).toFixed(2)}V${(top + high + 0.12 * pitch).toFixed(2)}L${at(root)} ${(top + 2 * high + 0.12 * pitch).toFixed(2)}`
  }).join('')
}
