import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { analyseLoops, PRESETS, type Scenario } from '../../sim/index.ts'
import type { Complex } from '../../sim/loops/complex.ts'
import { loopModels, responseCsv, type StateSpace } from '../../sim/loops/models.ts'

const at = (id: string) => PRESETS.find((preset) => preset.id === id)!.scenario

/** C (zI − A)⁻¹ B + D of one input and output, by elimination on rows scaled to like size. */
function gainAt({ a, b, c, d }: StateSpace, z: Complex, push: Complex[] = [{ re: 1, im: 0 }]): Complex[] {
  const n = a.length
  const times = (p: Complex, q: Complex) => ({ re: p.re * q.re - p.im * q.im, im: p.re * q.im + p.im * q.re })
  const over = (p: Complex, q: Complex) => {
    const size = q.re * q.re + q.im * q.im
    return { re: (p.re * q.re + p.im * q.im) / size, im: (p.im * q.re - p.re * q.im) / size }
  }
  const less = (p: Complex, q: Complex) => ({ re: p.re - q.re, im: p.im - q.im })
  const sum = (row: number[], list: Complex[]) =>
    row.reduce((total, weight, k) => ({ re: total.re + weight * list[k]!.re, im: total.im + weight * list[k]!.im }), {
      re: 0,
      im: 0,
    })
  const rows = a.map((row, i) => [
    ...row.map((value, j): Complex => ({ re: (i === j ? z.re : 0) - value, im: i === j ? z.im : 0 })),
    sum(b[i]!, push),
  ])
  for (const [i, row] of rows.entries()) {
    const size = Math.max(...row.slice(0, n).map(({ re, im }) => Math.hypot(re, im)))
    rows[i] = row.map(({ re, im }) => ({ re: re / size, im: im / size }))
  }
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k; i < n; i++)
      if (Math.hypot(rows[i]![k]!.re, rows[i]![k]!.im) > Math.hypot(rows[best]![k]!.re, rows[best]![k]!.im)) best = i
    ;[rows[k], rows[best]] = [rows[best]!, rows[k]!]
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const factor = over(rows[i]![k]!, rows[k]![k]!)
      for (let j = k; j <= n; j++) rows[i]![j] = less(rows[i]![j]!, times(factor, rows[k]![j]!))
    }
  }
  const state = rows.map((row, i) => over(row[n]!, row[i]!))
  return c.map((row, m) => {
    const inner = sum(row, state)
    const direct = sum(d[m]!, push)
    return { re: inner.re + direct.re, im: inner.im + direct.im }
  })
}

const turn = (angle: number): Complex => ({ re: Math.cos(angle), im: Math.sin(angle) })

describe.each([['teapot'], ['apricot'], ['bushing']])('%s', (id) => {
  const scenario: Scenario = at(id)
  const result = analyseLoops(scenario, { curves: true, workingPoints: ['free', 'nominal'] })
  const { loops } = loopModels(scenario, result)

  it('every loop is there as matrices of its size', () => {
    expect(loops.map(({ loop, workingPoint }) => `${loop} ${workingPoint}`)).toEqual(
      result.loops.map(({ loop, workingPoint }) => `${loop} ${workingPoint}`),
    )
    for (const { a, b, c, d, poles, multirate } of loops) {
      expect(a.every((row) => row.length === a.length)).toBe(true)
      expect([b.length, c[0]!.length, d.length, poles.length]).toEqual([a.length, a.length, 1, a.length])
      if (multirate) expect(multirate.d.every((row) => row.length === multirate.d.length)).toBe(true)
    }
  })

  it('matrices give the frequency response of the charts', () => {
    for (const [i, model] of loops.entries()) {
      if (model.multirate) continue
      const { frequency, re, im } = result.loops[i]!.curves!
      for (const k of [3, 60, 120, 180, 230]) {
        const [gain] = gainAt(model, turn(frequency[k]! * model.period))
        const apart = Math.hypot(gain!.re - re[k]!, gain!.im - im[k]!)
        expect(apart, `${model.loop} ${model.workingPoint} ${frequency[k]}`).toBeLessThan(
          1e-5 * Math.hypot(re[k]!, im[k]!) + 1e-8,
        )
      }
    }
  })

  it('a sine of the current error through the whole servo period comes back as in the chart', () => {
    for (const [i, { multirate, period }] of loops.entries()) {
      if (!multirate) continue
      const { frequency, re, im } = result.loops[i]!.curves!
      const count = multirate.d.length
      for (const k of [120, 200]) {
        // What the loop shows closed: u = sine − y, of which the share at the sine's own frequency is 1/(1 + L).
        const angle = frequency[k]! * period
        const closed = closedLoop(multirate)
        const push = Array.from({ length: count }, (_, m) => turn(m * angle))
        const back = gainAt(closed, turn(count * angle), push)
        const share = back.reduce(
          (sum, { re, im }, m) => {
            const { re: x, im: y } = turn(-m * angle)
            return { re: sum.re + (re * x - im * y) / count, im: sum.im + (re * y + im * x) / count }
          },
          { re: 0, im: 0 },
        )
        const size = share.re ** 2 + share.im ** 2
        const gain = { re: share.re / size - 1, im: -share.im / size }
        expect(Math.hypot(gain.re - re[k]!, gain.im - im[k]!)).toBeLessThan(1e-5 * Math.hypot(re[k]!, im[k]!))
      }
    }
  })

  it('poles, zeros and one gain make the same response', () => {
    for (const model of loops) {
      const product = (z: Complex) => {
        const part = (list: [number, number][]) =>
          list.reduce(
            ({ size, angle }, [re, im]) => ({
              size: size + Math.log(Math.hypot(z.re - re, z.im - im)),
              angle: angle + Math.atan2(z.im - im, z.re - re),
            }),
            { size: 0, angle: 0 },
          )
        const [zeros, poles] = [part(model.zeros), part(model.poles)]
        return { size: zeros.size - poles.size, angle: zeros.angle - poles.angle }
      }
      const found = [0.02, 0.2, 1, 2.5].map((angle) => {
        const [gain] = gainAt(model, turn(angle))
        const { size, angle: phase } = product(turn(angle))
        return { size: Math.log(Math.hypot(gain!.re, gain!.im)) - size, phase: Math.atan2(gain!.im, gain!.re) - phase }
      })
      for (const { size, phase } of found) {
        const name = `${model.loop} ${model.workingPoint}`
        expect(Math.abs(size - found[0]!.size), name).toBeLessThan(1e-4)
        expect(Math.cos(phase - found[0]!.phase), name).toBeGreaterThan(1 - 1e-8)
      }
    }
  })

  it('the table has one row a frequency, all of nine fields, and is that of the charts', () => {
    const { data } = Papa.parse<string[]>(responseCsv(result).trimEnd())
    expect(data).toHaveLength(1 + result.loops.reduce((sum, { curves }) => sum + curves!.frequency.length, 0))
    for (const row of data) expect(row).toHaveLength(9)
    const { loop, workingPoint, curves } = result.loops[0]!
    expect(data[1]!.slice(0, 2)).toEqual([loop, workingPoint])
    expect(Number(data[8]![5])).toBeCloseTo(curves!.magnitude[7]!, 5)
  })
})

/** u = w − y of y = C x + D u, with D strictly lower triangular: from w to u. */
function closedLoop({ period, a, b, c, d }: StateSpace): StateSpace {
  const count = d.length
  // (I + D)⁻¹ by forward substitution.
  const inverse = Array.from({ length: count }, () => new Array<number>(count).fill(0))
  for (let j = 0; j < count; j++)
    for (let i = j; i < count; i++) {
      let sum = i === j ? 1 : 0
      for (let k = j; k < i; k++) sum -= d[i]![k]! * inverse[k]![j]!
      inverse[i]![j] = sum
    }
  const times = (p: number[][], q: number[][]) =>
    p.map((row) => q[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * q[k]![j]!, 0)))
  const out = times(inverse, c).map((row) => row.map((value) => -value))
  const back = times(b, out)
  return {
    period,
    a: a.map((row, i) => row.map((value, j) => value + back[i]![j]!)),
    b: times(b, inverse),
    c: out,
    d: inverse,
    poles: [],
  }
}
