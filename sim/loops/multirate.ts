/**
 * The current loop with the servo closed around it, each at its own rate: exact, though what it does repeats only with the servo's
 * period. At a sample of the servo the command and the speed of the back-EMF feed-forward jump and are held; between, the current
 * loop runs `count` samples. The loop is cut at the current error e, which the controller takes in.
 *
 * A sine of frequency ω added at the cut comes back at ω and, weaker, at ω plus multiples of the servo's rate (Araki and Ito,
 * IEEE TAC 38(2), 1993, from memory). L(ω) = 1/S(ω) − 1, S the share that is found at ω itself: what a frequency analyser at the
 * running drive shows.
 */
import { type Complex, magnitude } from './complex.ts'
import { Dense, eigenvalues, solveShifted } from './matrix.ts'
import type { FrequencyResponse } from './response.ts'
import { root } from './scalar.ts'

export interface Multirate {
  /** Period of the fast loop [s], and its samples in one of the slow loop. */
  period: number
  count: number
  /** x⁺ = fast·x + input·v at each fast sample; at a slow one x is first replaced by jump·x + set·r, r the set point. */
  fast: Dense
  input: Float64Array
  jump: Dense
  set: Float64Array
  /** e = error·x; the loop is v = e. */
  error: Float64Array
  /** The last so many states are the servo's. */
  servoStates: number
  /** What the fast loop controls. */
  output: Float64Array
}

/** fast + gain·input·error: one fast sample with the loop closed. */
function closedSample({ fast, input, error }: Multirate, gain: number): Dense {
  const closed = fast.copy()
  for (let i = 0; i < fast.rows; i++) for (let j = 0; j < fast.rows; j++) closed.add(i, j, gain * input[i]! * error[j]!)
  return closed
}

/** Poles over one period of the slow loop, with the fast loop's gain `gain` times as large; 0: the fast loop cut. */
export const multiratePoles = (model: Multirate, gain = 1): Complex[] =>
  eigenvalues(closedSample(model, gain).power(model.count).times(model.jump))

/** One slow period as one step: x⁺ = A x + B v, e = C x + D v, with v and e the fast samples in it. `gain` as above. */
export interface Lifted {
  a: Dense
  b: Dense
  c: Dense
  d: Dense
}

export function liftedOf(model: Multirate, gain = 0): Lifted {
  const { count, input, error } = model
  const sample = closedSample(model, gain)
  const n = sample.rows
  const b = new Dense(n, count)
  const c = new Dense(count, n)
  const d = new Dense(count, count)
  let state = model.jump
  let column = new Dense(n, 1, input.slice())
  for (let m = 0; m < count; m++) {
    for (let j = 0; j < n; j++) for (let i = 0; i < n; i++) c.add(m, j, error[i]! * state.at(i, j))
    state = sample.times(state)
    // What goes in at sample k comes out at k + 1 + m.
    const out = column.data.reduce((sum, value, i) => sum + value * error[i]!, 0)
    for (let k = 0; k + 1 + m < count; k++) d.set(k + 1 + m, k, out)
    for (let i = 0; i < n; i++) b.set(i, count - 1 - m, column.data[i]!)
    column = sample.times(column)
  }
  return { a: state, b, c, d }
}

export class MultirateResponse implements FrequencyResponse {
  re = 0
  im = 0
  gain = 0
  returned = 1
  private readonly model: Multirate
  private readonly closed: Lifted

  constructor(model: Multirate) {
    this.model = model
    this.closed = liftedOf(model, 1)
  }

  /** Sets L at the angle ω·period of the fast loop, 0 … π. */
  at(angle: number): void {
    const { re, im } = this.sensitivity(angle)
    const size = re * re + im * im
    this.re = re / size - 1
    this.im = -im / size
    this.gain = Math.hypot(this.re, this.im)
    this.returned = 1 / Math.sqrt(size)
  }

  /** S: what of a sine added at the cut stands behind the sum at the same frequency. */
  private sensitivity(angle: number): Complex {
    const { a, b, c, d } = this.closed
    const { count } = this.model
    const n = a.rows
    const turn = Array.from({ length: count }, (_, m) => ({ re: Math.cos(m * angle), im: Math.sin(m * angle) }))
    const pushed = { re: new Float64Array(n), im: new Float64Array(n) }
    for (let i = 0; i < n; i++)
      for (let m = 0; m < count; m++) {
        pushed.re[i]! += b.at(i, m) * turn[m]!.re
        pushed.im[i]! += b.at(i, m) * turn[m]!.im
      }
    solveShifted(a, { re: Math.cos(count * angle), im: Math.sin(count * angle) }, pushed)
    let [re, im] = [0, 0]
    for (let m = 0; m < count; m++) {
      let [x, y] = [0, 0]
      for (let i = 0; i < n; i++) {
        x += c.at(m, i) * pushed.re[i]!
        y += c.at(m, i) * pushed.im[i]!
      }
      for (let k = 0; k < m; k++) {
        x += d.at(m, k) * turn[k]!.re
        y += d.at(m, k) * turn[k]!.im
      }
      re += x * turn[m]!.re + y * turn[m]!.im
      im += y * turn[m]!.re - x * turn[m]!.im
    }
    return { re: 1 + re / count, im: im / count }
  }
}

/** Answer of what the fast loop controls to a unit step of its set point, at every fast sample from that of the step on. */
export function multirateStep(model: Multirate, samples: number): Float64Array {
  const sample = closedSample(model, 1)
  const { jump, set, output, count } = model
  const n = sample.rows
  const value = new Float64Array(samples)
  let state = new Float64Array(n)
  for (let k = 0; k < samples; k++) {
    if (k % count === 0) state = moved(jump, state, set)
    for (let i = 0; i < n; i++) value[k]! += output[i]! * state[i]!
    state = moved(sample, state)
  }
  return value
}

function moved(matrix: Dense, state: Float64Array, push?: Float64Array): Float64Array<ArrayBuffer> {
  const n = matrix.rows
  const next = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let sum = push ? push[i]! : 0
    for (let j = 0; j < n; j++) sum += matrix.at(i, j) * state[j]!
    next[i] = sum
  }
  return next
}

/** Gains are tried up to this factor and down to its inverse, in strides, before the border between two of them is found. */
const WIDEST = 1e4
const STRIDE = 1.3

export interface GainBorder {
  /** At all gains tried between the present one and so many times as much the loop is stable. */
  factor: number
  /** Frequency at which it then swings [rad/s], or one of those that the slow loop cannot tell from it. */
  frequency: number
}

/** Nearest gain, above the present one or below it, at which a pole reaches the unit circle; null for none, or where it is outside now. */
export function gainBorder(model: Multirate, direction: 'up' | 'down'): GainBorder | null {
  const largest = (factor: number) =>
    multiratePoles(model, factor).reduce((most, pole) => (magnitude(pole) > magnitude(most) ? pole : most))
  const growth = (factor: number) => Math.log(magnitude(largest(factor)))
  if (!(growth(1) < 0)) return null
  const stride = direction === 'up' ? STRIDE : 1 / STRIDE
  let held = 1
  while (growth(held * stride) < 0) {
    held *= stride
    if (held > WIDEST || held < 1 / WIDEST) return null
  }
  const factor = root(growth, Math.min(held, held * stride), Math.max(held, held * stride))
  const { re, im } = largest(factor)
  return { factor, frequency: Math.abs(Math.atan2(im, re)) / (model.period * model.count) }
}
