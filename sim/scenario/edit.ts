/** Changing keys of a scenario by their paths. */

import type { Fault } from './fault.ts'
import { liftEdit, pathBefore } from './migrate.ts'
import { holds, type Key, keysOf, readPath } from './path.ts'
import { quantityAt } from './quantity-at.ts'
import { ACTUATORS } from './schema/actuator.ts'
import { type ActuatorKind, JOBS, type JobId, type Scenario } from './schema/index.ts'
import { type Checked, checkScenario } from './validate.ts'

export interface Edit {
  path: string
  /** Any JSON value; `undefined` takes the key, or the entry of a list, away. */
  value: unknown
}

const EXAMPLE = 'a path such as servo.kp or arm.moves[0].start'

/**
 * A copy of `input` with the edits made, checked anew. Missing objects and lists on the way are made, so that null can be replaced.
 * What an edit takes away takes its spread along. An edit by a path of version 1 is made where version 2 has it; an input of version 1 must be sound by itself.
 */
export function editScenario(input: object, edits: Edit[]): Checked {
  const start =
    'version' in input && input.version === 1 ? checkScenario(input) : { ok: true as const, scenario: input }
  if (!start.ok) return start
  const copy = { ...start.scenario }
  for (const { path, value } of edits.flatMap(liftEdit)) {
    const fault = make(copy, path, value)
    if (fault) return { ok: false, faults: [fault] }
  }
  const checked = checkScenario(withoutGone(start.scenario, copy))
  return checked.ok ? checked : { ok: false, faults: checked.faults.map((fault) => asWritten(fault, edits)) }
}

interface Spreads {
  job?: unknown
  actuator?: { kind?: unknown }
  spread?: { varies?: { path: string }[]; together?: { paths: string[] }[] }
}

/** What an edit has taken away no longer varies, nor goes together with anything; what never was is left for the check to refuse. */
function withoutGone(before: Spreads, after: Spreads): Spreads {
  const { varies, together } = before.spread ?? {}
  if (!Array.isArray(varies) || after.spread !== before.spread) return after
  const gone = varies.map(({ path }) => path).filter((path) => isGone(before, after, path))
  if (gone.length === 0) return after
  const spread = {
    ...after.spread,
    varies: varies.filter(({ path }) => !gone.includes(path)),
    ...(together && { together: together.filter(({ paths }) => !paths.some((path) => gone.includes(path))) }),
  }
  return { ...after, spread }
}

/** A number before and none now, which no default brings back. */
function isGone(before: Spreads, after: Spreads, path: string): boolean {
  const [was, is] = [before, after].map((each) => readPath(each as Scenario, path))
  if (typeof was !== 'number' || typeof is === 'number') return false
  const kind = after.actuator?.kind
  const job = isJob(after.job) ? { job: after.job } : {}
  return !(isKind(kind) && quantityAt({ actuator: { kind }, ...job }, path)?.default !== undefined)
}

const isJob = (job: unknown): job is JobId => typeof job === 'string' && Object.hasOwn(JOBS, job)

const isKind = (kind: unknown): kind is ActuatorKind => typeof kind === 'string' && Object.hasOwn(ACTUATORS, kind)

/** A fault of a key that was edited by its path of version 1, by that path. */
function asWritten(fault: Fault, edits: Edit[]): Fault {
  const before = pathBefore(fault.path)
  return edits.some(({ path }) => before === path || before.startsWith(`${path}.`)) ? { ...fault, path: before } : fault
}

/** Makes one edit in `root`, whose inner objects are copied on the way; what is wrong with the path, or null. */
function make(root: object, path: string, value: unknown): Fault | null {
  const keys = keysOf(path)
  if (!keys) return { path, given: path === '' ? 'an empty path' : 'no path', allowed: EXAMPLE }
  if (keys.includes('__proto__')) return { path, given: 'a path through __proto__', allowed: EXAMPLE }
  let at = root as Record<Key, unknown>
  for (const [index, key] of keys.entries()) {
    const last = index === keys.length - 1
    const misfit = misfitOf(at, key, value === undefined)
    if (misfit) return { path, ...misfit }
    if (last) set(at, key, value)
    else {
      const next = holds(at, key) ? at[key] : undefined
      if (typeof next === 'object' && next !== null) at[key] = Array.isArray(next) ? [...next] : { ...next }
      else if (value === undefined)
        return null // there is nothing to take away
      else at[key] = typeof keys[index + 1] === 'number' ? [] : {}
      at = at[key] as Record<Key, unknown>
    }
  }
  return null
}

/** Why a key cannot be set in an object or list; a list may grow by one entry at its end. */
function misfitOf(at: object, key: Key, takenAway: boolean): Omit<Fault, 'path'> | null {
  if (!Array.isArray(at))
    return typeof key === 'string' ? null : { given: `the index ${key}`, allowed: 'a key: this is no list' }
  if (typeof key === 'string') return { given: `the key ${key} of a list`, allowed: 'an index such as arm.moves[0]' }
  const most = takenAway ? at.length - 1 : at.length
  if (key <= most) return null
  return { given: `the index ${key}`, allowed: most < 0 ? 'none, as the list is empty' : `an index from 0 to ${most}` }
}

function set(at: Record<Key, unknown>, key: Key, value: unknown): void {
  if (value !== undefined) at[key] = value
  else if (Array.isArray(at)) at.splice(Number(key), 1)
  else delete at[key]
}
