/** The model page’s sections, in the order of the power’s way. */
import type { Section } from '../section.ts'
import { AXIS, FRAME } from './axis.ts'
import { BLOCKS, NEWTONS } from './drive.ts'
import { LOG } from './log.ts'
import { MEASURING } from './measuring.ts'
import { PART } from './part.ts'
import { RUN } from './run.ts'
import { SCATTER } from './scatter.ts'
import { STRATEGIES } from './strategies/index.ts'

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
