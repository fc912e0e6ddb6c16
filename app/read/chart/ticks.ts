import { formatPlain } from '../../ui/format.ts'

export const greatest = (values: Float64Array) => values.reduce((most, value) => Math.max(most, value), 0)

/** Round figures from 0 to `most`, in the shown unit. */
export function ticks(most: number, toShown: (si: number) => number): { si: number; text: string }[] {
  const top = toShown(most)
  const raw = top / 4
  const decade = 10 ** Math.floor(Math.log10(raw))
  const step = [1, 2, 5, 10].map((n) => n * decade).find((each) => each >= raw)!
  return Array.from({ length: Math.floor(top / step) + 1 }, (_, n) => ({
    si: n * step,
    text: formatPlain(n * step, 3),
  }))
}
