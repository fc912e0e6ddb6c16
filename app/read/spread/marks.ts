/** Figures along an axis that begins at zero: 1, 2 or 5 times a power of ten apart, about `count` of them up to `end`. */
export function marksUpTo(end: number, count: number): number[] {
  const raw = end / Math.max(2, Math.floor(count))
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = power * ([1, 2, 5, 10].find((each) => each * power >= raw) ?? 10)
  return Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, n) => n * step)
}
