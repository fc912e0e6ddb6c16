/**
 * A scenario as a short text for an address: `2.CHECK.DATA`. 2 is the version of the scenario format, DATA the keys that differ from
 * the format's defaults as compressed JSON in base64url, CHECK a checksum of DATA that tells a cut link from a whole one. Links of
 * version 1 are read as well.
 */
import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'
import { checkScenario, type Fault, faultLine, LONGEST_FILE, type Scenario } from '../../sim/index.ts'
import { carriedBy, carrierOf } from './beside.ts'
import type { Axis } from './scenario.ts'

const VERSION = '2'
const READ = ['1', VERSION]

/** Longest link text that is read, in characters. */
const LONGEST_LINK = 200_000

/** `faults` are those of a scenario that could be unpacked. */
export type Opened = { ok: true; scenario: Scenario } | { ok: false; why: string; faults?: Fault[] }

export function scenarioToLink(scenario: Scenario): string {
  const { job, actuator } = scenario
  const always = ['actuator.kind', ...(job === 'grip' ? [] : ['job'])] // a link that names no job is one of a grip
  const changed = difference(scenario, defaults(actuator.kind, job), always) ?? {}
  const data = toBase64(deflateSync(strToU8(JSON.stringify(changed)), { level: 9 }))
  return `${VERSION}.${checksum(data)}.${data}`
}

/** `why` is one sentence. */
export function linkToScenario(link: string): Opened {
  const [version, check, data, ...rest] = link.split('.')
  if (!version || !/^\d+$/.test(version)) return refuse('This link holds no scenario that the bench can read.')
  if (!READ.includes(version))
    return refuse(`This link is of version ${version}; this bench reads versions ${READ.join(' and ')}.`)
  if (link.length > LONGEST_LINK)
    return refuse(`This link has ${link.length} characters; at most ${LONGEST_LINK} are read.`)
  if (!check || !data || rest.length > 0 || checksum(data) !== check)
    return refuse('This link is incomplete or was changed on its way, so its scenario cannot be read.')
  try {
    const bytes = inflateSync(fromBase64(data), { out: new Uint8Array(LONGEST_FILE + 1) })
    if (bytes.length > LONGEST_FILE) return refuse('This link holds more than a scenario can be.')
    const changed: unknown = JSON.parse(strFromU8(bytes))
    const checked = checkScenario(isRecord(changed) ? { version: Number(version), ...changed } : changed)
    if (checked.ok) return checked
    const { faults } = checked
    return { ok: false, why: `This link holds a scenario with faults: ${told(faults)}.`, faults }
  } catch {
    return refuse('This link cannot be unpacked, so its scenario cannot be read.')
  }
}

/** An axis as the link of the scenario that carries it. Null: it is in no sound scenario. */
export function axisToLink(axis: Axis): string | null {
  const carrier = carrierOf(axis)
  return carrier && scenarioToLink(carrier)
}

/** Null: it holds none. */
export function linkToAxis(link: string): Axis | null {
  const opened = linkToScenario(link)
  return opened.ok ? carriedBy(opened.scenario) : null
}

/** Faults that are told in full; a sentence has an end. */
const MOST_TOLD = 5

function told(faults: Fault[]): string {
  const lines = faults.slice(0, MOST_TOLD).map(faultLine)
  const more = faults.length - lines.length
  return [...lines, ...(more > 0 ? [`and ${more} more`] : [])].join('; ')
}

const refuse = (why: string): Opened => ({ ok: false, why })

function defaults(kind: Scenario['actuator']['kind'], job: Scenario['job']): Scenario {
  const checked = checkScenario({ job, actuator: { kind } })
  if (!checked.ok) throw new Error(`The defaults of ${kind} are not sound.`)
  return checked.scenario
}

/** The keys of `value` that differ from `plain`, those in `always` in any case; undefined where nothing does. Lists count as one value. */
function difference(value: unknown, plain: unknown, always: string[], path = ''): unknown {
  if (always.includes(path)) return value
  if (!isRecord(value) || !isRecord(plain)) return JSON.stringify(value) === JSON.stringify(plain) ? undefined : value
  const changed = Object.entries(value).flatMap(([key, inner]) => {
    const left = difference(inner, plain[key], always, path ? `${path}.${key}` : key)
    return left === undefined ? [] : [[key, left] as const]
  })
  return changed.length > 0 ? Object.fromEntries(changed) : undefined
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** FNV-1a over UTF-16 units, 32 bits, in base 36. */
function checksum(text: string): string {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index++) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  return (hash >>> 0).toString(36)
}

function toBase64(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

const fromBase64 = (text: string) =>
  Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (unit) => unit.charCodeAt(0))
