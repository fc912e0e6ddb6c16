/**
 * A sampled loop that is closed by one signal: x⁺ = A x + B u, u = −C x. Its loop gain is L(z) = C (zI − A)⁻¹ B; the set point
 * comes in through `reference`, and `output` is what the loop controls.
 */
import type { Complex } from './complex.ts'
import { Dense, eigenvalues } from './matrix.ts'

export type LoopId = 'current' | 'position' | 'velocity' | 'force'
export const LOOPS: LoopId[] = ['current', 'position', 'velocity', 'force']

/** The loops that the servo runs around the current loop; each is a sampled loop of one rate. */
export type ServoLoopId = Exclude<LoopId, 'current'>

export interface LoopModel {
  /** Sample period of the loop [s]. */
  period: number
  a: Dense
  b: Float64Array
  c: Float64Array
  reference: Float64Array
  output: Float64Array
  /** Eigenvalues of A, where they are known without another decomposition. */
  openPoles: Complex[]
  /** One mode at z = 1 is part of neither L nor the controlled quantity. */
  neutral: boolean
}

/** What a controller acts on: a plant with one input and, read at each sample, a value and, for its derivative, a slope. */
export interface SampledPlant {
  a: Dense
  b: Float64Array
  value: Float64Array
  slope: Float64Array
  poles: Complex[]
}

/** u = gain·e + I − kd·slope, I⁺ = I + step·e: all controllers of the drive. Without an integral there is no state for it. */
export interface Law {
  gain: number
  step: number
  kd: number
  /** Gain on the set point, where its proportional part takes only a share of it. */
  forward: number
}

/** `weight` is the share of the set point that the proportional part acts on. */
export const lawOf = (gains: { kp: number; ki: number; kd?: number }, period: number, weight = 1): Law => ({
  gain: gains.kp + (gains.ki * period) / 2,
  forward: weight * gains.kp + (gains.ki * period) / 2,
  step: gains.ki * period,
  kd: gains.kd ?? 0,
})

export function closeWith(plant: SampledPlant, law: Law, period: number): LoopModel {
  const n = plant.a.rows
  const size = law.step > 0 ? n + 1 : n
  const a = plant.a.grown(size, size)
  const b = grow(plant.b, size)
  const c = new Float64Array(size)
  const reference = new Float64Array(size)
  for (let i = 0; i < n; i++) {
    c[i] = law.gain * plant.value[i]! + law.kd * plant.slope[i]!
    reference[i] = law.forward * plant.b[i]!
    if (size > n) a.set(n, i, -law.step * plant.value[i]!)
  }
  if (size > n) {
    a.set(n, n, 1)
    c[n] = -1
    reference[n] = law.step
  }
  const openPoles = size > n ? [...plant.poles, { re: 1, im: 0 }] : plant.poles
  return { period, a, b, c, reference, output: grow(plant.value, size), openPoles, neutral: false }
}

/** A − B C: the loop with its feedback. */
export function closedMatrix({ a, b, c }: LoopModel): Dense {
  const closed = a.copy()
  for (let i = 0; i < a.rows; i++) for (let j = 0; j < a.rows; j++) closed.add(i, j, -b[i]! * c[j]!)
  return closed
}

/** Without a gain they are the open ones, of which the decomposition would part those that are alike. */
export const closedPoles = (model: LoopModel): Complex[] =>
  model.c.every((weight) => weight === 0) ? [...model.openPoles] : eigenvalues(closedMatrix(model))

/** The poles that belong to L: without the neutral mode's. */
export function ownPoles(poles: readonly Complex[], { neutral }: LoopModel): Complex[] {
  if (!neutral) return [...poles]
  const off = poles.map(({ re, im }) => Math.hypot(re - 1, im))
  const least = off.indexOf(Math.min(...off))
  return poles.filter((_, i) => i !== least)
}

export function grow(vector: Float64Array, size: number): Float64Array {
  const made = new Float64Array(size)
  made.set(vector)
  return made
}

export const columnOf = (vector: Float64Array) => new Dense(vector.length, 1, vector.slice())

/** Appends a low-passed difference of `value` as a drive computes it: two states, the last reading and the filtered slope. */
export function withSlope(plant: SampledPlant, weight: number, rate: number): SampledPlant {
  const n = plant.a.rows
  const a = plant.a.grown(n + 2, n + 2)
  const slope = new Float64Array(n + 2)
  for (let i = 0; i < n; i++) {
    a.set(n, i, plant.value[i]!)
    slope[i] = weight * rate * plant.value[i]!
  }
  slope[n] = -weight * rate
  slope[n + 1] = 1 - weight
  for (let i = 0; i < n + 2; i++) a.set(n + 1, i, slope[i]!)
  return {
    a,
    b: grow(plant.b, n + 2),
    value: grow(plant.value, n + 2),
    slope,
    poles: [...plant.poles, { re: 0, im: 0 }, { re: 1 - weight, im: 0 }],
  }
}
