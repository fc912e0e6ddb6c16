/**
 * Sampling, frequency response and poles against scipy.signal (fixtures/loops-plants.py made the fixture, with scipy 1.17.1 and
 * numpy 2.4.6), and the sampling of two published plants.
 */
import { readFileSync } from 'node:fs'
import { EVD, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import type { Complex } from '../../sim/loops/complex.ts'
import { Dense, eigenvalues, exponential, held, lifted } from '../../sim/loops/matrix.ts'
import { closedPoles, type LoopModel } from '../../sim/loops/model.ts'
import { LoopResponse } from '../../sim/loops/response.ts'
import { zerosOf } from '../../sim/loops/zeros.ts'
import { expm } from './support.ts'

interface Plant {
  period: number
  a: number[][]
  b: number[]
  c: number[]
  ad: number[][]
  bd: number[]
  angles: number[]
  re: number[]
  im: number[]
  open: [number, number][]
  closed: [number, number][]
  zeros: [number, number][]
}

const PLANTS: Plant[] = JSON.parse(readFileSync(new URL('./fixtures/loops-plants.json', import.meta.url), 'utf8'))

const dense = (rows: number[][]) => new Dense(rows.length, rows[0]!.length, Float64Array.from(rows.flat()))
const column = (values: number[]) => new Dense(values.length, 1, Float64Array.from(values))

/** Largest distance of a pole from the nearest of the other list. */
function apart(poles: readonly Complex[], others: readonly [number, number][]): number {
  return Math.max(...poles.map(({ re, im }) => Math.min(...others.map(([a, b]) => Math.hypot(re - a, im - b)))))
}

describe('twelve random sampled plants', () => {
  it('there are at least ten, with two to eight states, stable and unstable ones', () => {
    expect(PLANTS.length).toBeGreaterThanOrEqual(10)
    const radius = PLANTS.map(({ closed }) => Math.max(...closed.map(([re, im]) => Math.hypot(re, im))))
    expect(Math.min(...radius)).toBeLessThan(1)
    expect(Math.max(...radius)).toBeGreaterThan(1)
  })

  for (const [i, plant] of PLANTS.entries()) {
    it(`plant ${i + 1}, ${plant.b.length} states`, () => {
      const sampled = held(dense(plant.a), column(plant.b), plant.period)
      const size = Math.max(...plant.ad.flat().map(Math.abs))
      for (const [k, value] of plant.ad.flat().entries())
        expect(Math.abs(sampled.a.data[k]! - value)).toBeLessThan(1e-10 * size)
      const push = Math.max(...plant.bd.map(Math.abs))
      for (const [k, value] of plant.bd.entries())
        expect(Math.abs(sampled.b.data[k]! - value)).toBeLessThan(1e-9 * push)

      const model: LoopModel = {
        period: plant.period,
        a: sampled.a,
        b: sampled.b.column(0),
        c: Float64Array.from(plant.c),
        reference: sampled.b.column(0),
        output: Float64Array.from(plant.c),
        openPoles: eigenvalues(sampled.a),
        neutral: false,
      }
      const poles = closedPoles(model)
      expect(apart(poles, plant.closed)).toBeLessThan(1e-8)
      expect(apart(model.openPoles, plant.open)).toBeLessThan(1e-8)
      const zeros = zerosOf(model.a, model.b, model.c)
      expect(zeros).toHaveLength(plant.zeros.length)
      for (const zero of zeros) expect(apart([zero], plant.zeros)).toBeLessThan(1e-7 * Math.hypot(zero.re, zero.im))
      const response = new LoopResponse(poles, model.openPoles)
      for (const [k, angle] of plant.angles.entries()) {
        response.at(angle)
        const [re, im] = [plant.re[k]!, plant.im[k]!]
        expect(Math.hypot(response.re - re, response.im - im)).toBeLessThan(1e-6 * Math.hypot(re, im) + 1e-9)
      }
    })
  }
})

it('two masses on a spring, zero-order hold, against their published discrete transfer function', () => {
  // m1 0.3 kg, m2 0.1 kg, k 2e4 N/m, c 2 N·s/m, force on m1, 1 ms; denominator by scipy.signal.cont2discrete and by GNU Octave c2d.
  const [m1, m2, k, c] = [0.3, 0.1, 2e4, 2]
  const a = dense([
    [-c / m1, c / m1, -k / m1],
    [c / m2, -c / m2, k / m2],
    [1, -1, 0],
  ])
  const sampled = held(a, column([1 / m1, 0, 0]), 1e-3)
  const poles = eigenvalues(sampled.a)
  const product = poles.reduce((p, q) => ({ re: p.re * q.re - p.im * q.im, im: p.re * q.im + p.im * q.re }))
  expect(poles.reduce((sum, pole) => sum + pole.re, 0)).toBeCloseTo(2.71633905373, 9)
  expect(product.re).toBeCloseTo(0.973685749353, 9)
  expect(sampled.b.at(0, 0)).toBeCloseTo(0.00328625740573, 12)
})

it('a motor sampled at 0.1 ms', () => {
  // L 3 mH, R 0.8 Ω, K 0.05 V·s/rad, J 8e-5 kg·m²: A and B by scipy.signal.cont2discrete.
  const [l, r, kt, j] = [3e-3, 0.8, 0.05, 8e-5]
  const a = dense([
    [-r / l, -kt / l],
    [kt / j, 0],
  ])
  const sampled = held(a, column([1 / l, 0]), 1e-4)
  const expected = [0.973634583197, -0.00164461211313, 0.0616729542422, 0.999948377007]
  for (const [i, value] of expected.entries()) expect(sampled.a.data[i]).toBeCloseTo(value, 11)
  expect(sampled.b.data[0]).toBeCloseTo(0.0328922422625, 11)
  expect(sampled.b.data[1]).toBeCloseTo(0.00103245986164, 11)
})

it('the exponential of a badly scaled matrix agrees with the plain Taylor series', () => {
  const rows = [
    [-9e2, -5e4, 0, 0],
    [12, -5, -1.6e6, 60],
    [0, 1, 0, -1],
    [0, 800, 2.2e7, -800],
  ]
  const own = exponential(dense(rows), 5e-5)
  const other = expm(Matrix.mul(new Matrix(rows), 5e-5))
  for (let i = 0; i < 4; i++)
    for (let j = 0; j < 4; j++)
      expect(Math.abs(own.at(i, j) - other.get(i, j))).toBeLessThan(1e-12 * (1 + Math.abs(other.get(i, j))))
})

it('a span of samples is the samples one after the other', () => {
  const a = dense([
    [0.9, 0.2],
    [-0.1, 0.8],
  ])
  const b = dense([
    [0.3, 1],
    [0.5, 0],
  ])
  const span = lifted(a, b, 13)
  let state = [0.7, -0.4]
  const start = state
  for (let k = 0; k < 13; k++)
    state = state.map((_, i) => a.at(i, 0) * state[0]! + a.at(i, 1) * state[1]! + b.at(i, 0) * 2 + b.at(i, 1) * -3)
  for (const i of [0, 1]) {
    const lift = span.a.at(i, 0) * start[0]! + span.a.at(i, 1) * start[1]! + span.b.at(i, 0) * 2 + span.b.at(i, 1) * -3
    expect(lift).toBeCloseTo(state[i]!, 12)
  }
})

it('balanced eigenvalues are those of the matrix as it is', () => {
  const rows = [
    [0.5, 1e6, 0],
    [-1e-7, 0.4, 3],
    [0, 2e-3, -0.2],
  ]
  const { realEigenvalues, imaginaryEigenvalues } = new EVD(new Matrix(rows))
  const others = realEigenvalues.map((re, i): [number, number] => [re, imaginaryEigenvalues[i]!])
  expect(apart(eigenvalues(dense(rows)), others)).toBeLessThan(1e-9)
})
