/** Short grips for the tests: the jaws start close to the part, the run lasts 0.4 s. */
import type { Scenario } from '../../sim/index.ts'
import { make } from '../scenario/make.ts'

/** 2 mm to go at 50 mm/s: touches within 0.1 s; the part hangs from 0.25 s on. */
const QUICK = { 'jaws.opening': 0.074, 'run.duration': 0.4, 'arm.lift': 0.25 }

export const quick = (edits: Record<string, unknown> = {}): Scenario => make({}, { ...QUICK, ...edits })
