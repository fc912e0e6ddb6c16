/** Enrols formats and rules of the jobs other than gripping. */
import { CAP_RULES } from './cap-rules.ts'
import { PRESS_RULES } from './press-rules.ts'
import type { Rule } from './rule.ts'
import { JOB_RULES } from './rules.ts'
import { JOBS } from './schema/index.ts'
import { OTHER_FORMATS } from './schema/others.ts'
import { WEB_RULES } from './web-rules.ts'

/** A job may have none. */
const RULES: Partial<Record<keyof typeof OTHER_FORMATS, Rule[]>> = {
  press: PRESS_RULES,
  cap: CAP_RULES,
  web: WEB_RULES,
}

Object.assign(JOBS, OTHER_FORMATS)
Object.assign(JOB_RULES, RULES)
