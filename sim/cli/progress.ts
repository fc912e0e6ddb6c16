/** Signs of life of a long run, on standard error: a line that is written anew on a terminal, now and then a new one elsewhere. */
import { progressText } from '../say/progress.ts'

/** Time until the first sign and between two of them, by where they are read [s]. */
const TERMINAL = { first: 1, next: 0.2 }
const ELSEWHERE = { first: 30, next: 30 }

interface Out {
  isTTY?: boolean
  write(text: string): unknown
}

/** Of one run, from now on; `clock` reads the time [s]. */
export function progressOf(label: string, out: Out = process.stderr, clock = () => performance.now() / 1000) {
  const pace = out.isTTY ? TERMINAL : ELSEWHERE
  const began = clock()
  let due = began + pace.first
  let shown = false
  return {
    /** `done` is the share that is done. Always true: a person who wants no more ends the command. */
    tell(done: number): boolean {
      const now = clock()
      if (now < due) return true
      due = now + pace.next
      shown = true
      const text = `${label}: ${progressText(done, now - began)}`
      out.write(out.isTTY ? `\r${text}${CLEAR}` : `${text}\n`)
      return true
    },
    /** Leaves the terminal as it was. */
    end() {
      if (shown && out.isTTY) out.write(`\r${CLEAR}`)
    },
  }
}

/** All steps of a search that tells with each how many of how many are done. */
export function searchedBy<Step extends { done: number; of: number }>(
  label: string,
  steps: Iterable<Step>,
  progress = progressOf(label),
): Step[] {
  const all: Step[] = []
  for (const step of steps) {
    all.push(step)
    progress.tell(step.done / step.of)
  }
  progress.end()
  return all
}

/** Clears the rest of a line (ECMA-48, erase in line). */
const CLEAR = '\u001b[K'
