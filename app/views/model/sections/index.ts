/** The model page’s sections, in the order of the power’s way. */
import type { JobId } from '../../../../sim/index.ts'
import type { Section } from '../section.ts'
import { AXIS, FRAME } from './axis.ts'
import { CAP } from './cap.ts'
import { BLOCKS, NEWTONS } from './drive.ts'
import { LOG } from './log.ts'
import { MEASURING } from './measuring.ts'
import { PART } from './part.ts'
import { PRESS } from './press.ts'
import { RUN } from './run.ts'
import { SCATTER } from './scatter.ts'
import { STRATEGIES } from './strategies/index.ts'
import { WEB } from './web.ts'

/** Of a grip: the whole way. */
export const SECTIONS: Section[] = [
  FRAME,
  ...AXIS,
  ...PART,
  ...MEASURING,
  ...BLOCKS,
  ...NEWTONS,
  ...Object.values(STRATEGIES).flat(),
  ...RUN,
  SCATTER,
  LOG,
]

/** Of each other job what is its own: axis and drive are those of a grip. Null: this page does not tell it. */
export const OWN_SECTIONS: Record<Exclude<JobId, 'grip'>, Section[] | null> = { press: PRESS, cap: CAP, web: WEB }

/** What the page tells of a job. */
export const sectionsOf = (job: JobId): Section[] => (job === 'grip' ? SECTIONS : (OWN_SECTIONS[job] ?? []))
