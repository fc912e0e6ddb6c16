import type { Cascade } from './cascade.ts'
import { lifted } from './matrix.ts'
import { closedMatrix, columnOf, type LoopId, type LoopModel } from './model.ts'
import { multirateStep } from './multirate.ts'

/** Answer of the controlled quantity to a unit step of its set point: [s] and [1]. */
export interface StepResponse {
  time: Float64Array
  value: Float64Array
}

/** Time in which a step response has come to rest for most of its way [s]: fifteen times 1/crossover, or 200 samples without one. */
export const stepSpan = (period: number, crossover: number | null) =>
  crossover === null ? 200 * period : 15 / crossover

/** `samples` values over about `duration` [s], every whole number of the loop's samples; the first is that at the step itself. */
export function stepResponse(model: LoopModel, duration: number, samples: number): StepResponse {
  const stride = Math.max(1, Math.round(duration / model.period / samples))
  const { a, b } = lifted(closedMatrix(model), columnOf(model.reference), stride)
  const n = a.rows
  const time = new Float64Array(samples)
  const value = new Float64Array(samples)
  let state = new Float64Array(n)
  let next = new Float64Array(n)
  for (let k = 0; k < samples; k++) {
    time[k] = k * stride * model.period
    let answer = 0
    for (let i = 0; i < n; i++) {
      answer += model.output[i]! * state[i]!
      let sum = b.data[i]!
      for (let j = 0; j < n; j++) sum += a.data[i * n + j]! * state[j]!
      next[i] = sum
    }
    value[k] = answer
    ;[state, next] = [next, state]
  }
  return { time, value }
}

/** The same of a loop by its name. The current steps with the servo's command held but for the step, as the drive's own test does it. */
export function stepOf(cascade: Cascade, loop: LoopId, duration: number, samples: number): StepResponse {
  if (loop !== 'current') return stepResponse(cascade.loop(loop), duration, samples)
  const model = cascade.currentLoop(false)
  const stride = Math.max(1, Math.round(duration / model.period / samples))
  const every = multirateStep(model, stride * samples)
  const at = (k: number) => k * stride
  return {
    time: Float64Array.from({ length: samples }, (_, k) => at(k) * model.period),
    value: Float64Array.from({ length: samples }, (_, k) => every[at(k)]!),
  }
}
