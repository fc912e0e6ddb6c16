/** A bench as its run has left it, in the words of a job's judgement. */
import type { Bench } from '../cycle/bench.ts'
import { CURRENT_LOOP, NUMBERS, POSITION_LOOP, TRAVEL } from '../cycle/rails.ts'
import type { Cause, RunEnd } from '../job/job.ts'

const CAUSES: Record<number, Cause> = {
  [NUMBERS]: 'numbers',
  [TRAVEL]: 'travel',
  [POSITION_LOOP]: 'position loop',
  [CURRENT_LOOP]: 'current loop',
}

export const endOf = ({ load, figures, axis, period, state, rails }: Bench, hash: string): RunEnd => ({
  load,
  sums: figures.sums,
  period,
  step: axis.step,
  engaged: state.engaged,
  left: rails.state.left,
  cause: CAUSES[rails.state.cause] ?? '',
  hash,
})
