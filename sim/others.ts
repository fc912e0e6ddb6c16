/**
 * Enrols the jobs other than gripping: formats, rules, presets, what runs them and what is said of them. Every program imports this
 * first; the page loads it when it needs one of them, as it is a good part of what it would otherwise open with.
 */
import './scenario/others.ts'
import { JOBS } from './job/index.ts'
import { OTHER_JOBS } from './job/others.ts'
import { JOB_WORDS } from './say/jobs.ts'
import { OTHER_WORDS } from './say/others.ts'
import { ALL_PRESETS, PRESETS } from './scenario/presets/index.ts'
import { CAP_PRESETS, PRESS_PRESETS, WEB_PRESETS } from './scenario/presets/others.ts'

Object.assign(JOBS, OTHER_JOBS)
Object.assign(JOB_WORDS, OTHER_WORDS)
ALL_PRESETS.splice(PRESETS.length, Number.POSITIVE_INFINITY, ...PRESS_PRESETS, ...CAP_PRESETS, ...WEB_PRESETS)

export { CAP_PRESETS, PRESS_PRESETS, WEB_PRESETS }
