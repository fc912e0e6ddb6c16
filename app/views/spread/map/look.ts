/** How what became of a part looks on a map: a hue and a hatching of its own, and a word. */
import { JOBS, type JobId, UNFIT } from '../../../../sim/index.ts'
import { type AnyVerdict, toneOf, verdictWord } from '../../../read/result/words.ts'

export const wordOfClass = (job: JobId, name: string): string => {
  if (name === UNFIT) return `${verdictWord(JOBS[job].well)}, not as required`
  return name === 'refused' ? 'Not allowed' : verdictWord(name)
}

/** What the style sheet takes its hue from; nothing is done well that is not fit or may not be. */
export const dressOf = (job: JobId, name: string) => ({
  'data-class': name,
  'data-tone': name === JOBS[job].well ? 'calm' : name === UNFIT || name === 'refused' ? undefined : toneOf(name),
})

/** Lines of the hatching in a square of 8 px; none for what is done well. */
const HATCHES: Record<AnyVerdict | typeof UNFIT | 'refused', string> = {
  held: '',
  seated: '',
  tight: '',
  taut: '',
  unfit: 'M4 3.2v1.6M0 7.2v.8M0 0v.8M8 7.2v.8M8 0v.8',
  crushed: 'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  forced: 'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  marked: 'M1 7L4 4',
  dropped: 'M2 0V8M6 0V8',
  short: 'M2 0V8M6 0V8',
  stretched: 'M0 2H8M2 0V8',
  torn: 'M-2 2L2 -2M0 8L8 0M6 10L10 6M1 1L3 3',
  stripped: 'M-2 2L2 -2M0 8L8 0M6 10L10 6M4 3V5',
  'cross-threaded': 'M1 7L4 4M5 3L7 1',
  slipped: 'M0 2H8M0 6H8',
  slack: 'M0 2H8M0 6H8',
  loose: 'M-2 6L2 10M0 0L8 8M6 -2L10 2',
  tilted: 'M-2 6L2 10M0 0L8 8M6 -2L10 2',
  missed: 'M2 2L6 6M6 2L2 6',
  unstable: 'M0 4H8M4 0V8',
  refused: 'M4 3.5v1',
}

export const hatchOf = (name: string): string => HATCHES[name as keyof typeof HATCHES]
