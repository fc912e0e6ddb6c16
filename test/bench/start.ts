/**
 * From a fresh process to the first result of the command line, once it is built: a grip of the opening preset by every strategy,
 * beside the same process with nothing to do. Told by the clock, so the load of the machine counts.
 */
import { spawnSync } from 'node:child_process'
import { goal, row, summary } from './report.ts'
import { median } from './stats.ts'

/** [s] */
const GOAL = 1
const ROUNDS = 9

export function start(): void {
  grip() // what is not built yet is built now
  const rounds = Array.from({ length: ROUNDS }, () => ({ empty: timed(['-e', '0']), grip: grip() }))
  const grips = rounds.map((round) => round.grip)
  const idle = summary(
    rounds.map((round) => round.empty),
    2,
  )
  row('Node with nothing to do [s]', idle)
  row('command line, three grips [s]', summary(grips, 2))
  const middle = median(grips)
  goal('command line to its first result, median', `${middle.toFixed(2)} s`, `< ${GOAL} s`, middle < GOAL)
}

const grip = () => timed(['.tools/jawbench.mjs', 'grip', 'teapot'])

/** Seconds from the start of a process to its end. */
function timed(args: string[]): number {
  const begin = performance.now()
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr)
  return (performance.now() - begin) / 1e3
}
