/** Coming back: the scenario and the axis beside in the address and in the browser, the view's settings and the lessons' progress in the browser. */
import { ALL_PRESETS, CHANNELS, parseScenario, type Scenario, STRATEGIES } from '../../sim/index.ts'
import { holdsLink, keepAddress, linked, linkedBeside, startAddress } from './address.ts'
import { carriedBy, carrierOf } from './beside.ts'
import { useLessons } from './lessons.ts'
import type { Opened } from './link.ts'
import { fetchOthers, lacksJob } from './others.ts'
import { fetchPacking, packing } from './packing.ts'
import { useResults } from './results.ts'
import { type Axis, first, useScenario } from './scenario.ts'
import { share } from './share.ts'
import { useView } from './view.ts'

const SCENARIO_KEY = 'jawbench.scenario'
const BESIDE_KEY = 'jawbench.beside'
const VIEW_KEY = 'jawbench.view'
const LESSONS_KEY = 'jawbench.lessons'
const PLAYED_KEY = 'jawbench.played'

/** The settings that are kept, and what each may be. */
const SOUND = {
  units: (value: unknown) => value === 'si' || value === 'us',
  theme: (value: unknown) => value === 'light' || value === 'dark' || value === 'system',
  lens: (value: unknown) => typeof value === 'boolean',
  bent: (value: unknown) => typeof value === 'boolean',
  shown: (value: unknown) => isListOf(value, STRATEGIES),
  charts: (value: unknown) => isListOf(value, CHANNELS),
}
const KEPT = Object.keys(SOUND) as (keyof typeof SOUND)[]

const isListOf = (value: unknown, known: readonly { id: string }[]): value is string[] =>
  Array.isArray(value) && value.every((id) => known.some((each) => each.id === id))

/** Rest after which address and browser are written [ms]; browsers limit how often an address may change. */
const REST = 300

/** Fetches what reads links, and the other jobs, where what was there needs them. Rejects where they cannot be fetched. */
export async function fetchKept(): Promise<void> {
  if (holdsLink() || [SCENARIO_KEY, BESIDE_KEY].some((key) => isLink(read(key)))) await fetchPacking()
  if ([linked(), kept(SCENARIO_KEY)].some((each) => each && lacksJob(each))) await fetchOthers()
}

/** Brings back what was there and keeps it from now on. Call once, before the first run, with the jobs that it takes at hand. */
export function startKeeping() {
  restoreView()
  restoreLessons()
  const refused = restoreScenario()
  let rest = 0
  useScenario.subscribe((now, before) => {
    if (now.scenario === before.scenario && now.beside === before.beside) return
    fetchPacking().catch(() => {}) // for the address, see there
    clearTimeout(rest)
    rest = window.setTimeout(keepScenario, REST)
  })
  useView.subscribe((now, before) => {
    if (KEPT.some((key) => now[key] !== before[key]))
      write(VIEW_KEY, JSON.stringify(Object.fromEntries(KEPT.map((key) => [key, now[key]]))))
  })
  useLessons.subscribe(({ done, tried }, before) => {
    if (done !== before.done || tried !== before.tried) write(LESSONS_KEY, JSON.stringify({ done, tried }))
  })
  startAddress(take)
  // Also what nobody changes, so that going back from a link that is opened later finds it; a refused link stays to be read.
  if (!refused) rest = window.setTimeout(keepScenario, REST)
  window.addEventListener('pagehide', keepScenario)
}

function keepScenario() {
  const { scenario, beside } = useScenario.getState()
  const carrier = beside && carrierOf(beside)
  keepAddress()
  write(SCENARIO_KEY, JSON.stringify(scenario))
  write(BESIDE_KEY, carrier ? JSON.stringify(carrier) : '')
}

/** The bench kept links once. */
const isLink = (text: string | null) => text !== null && /^\d+\./.test(text)

/** Null: nothing is kept. */
function kept(key: string): Opened | null {
  const text = read(key)
  if (!text) return null
  if (isLink(text)) return packing()!.linkToScenario(text)
  const parsed = parseScenario(text)
  return parsed.ok ? parsed : { ...parsed, why: '' }
}

/** Whether the address holds a link that cannot be opened. */
function restoreScenario(): boolean {
  const before = kept(SCENARIO_KEY)
  const beside = kept(BESIDE_KEY)
  if (before?.ok) put(before.scenario, beside?.ok ? carriedBy(beside.scenario) : null)
  const opened = linked()
  if (opened?.ok) put(opened.scenario, openedBeside())
  else if (opened) useResults.getState().say(`${opened.why} The bench is as it was.`)
  return opened?.ok === false
}

/** The first scenario on the bench: nothing to undo. "Reset" goes back to the preset of the same name. */
function put(found: Scenario, beside: Axis | null) {
  const scenario = share(first, found) // the very same where nothing differs
  const preset = ALL_PRESETS.find((each) => each.scenario.name === scenario.name)
  useScenario.setState({ scenario, base: preset?.scenario ?? scenario, beside })
}

function take(opened: Opened, hash: string) {
  if (opened.ok) useScenario.getState().load(opened.scenario, undefined, openedBeside(hash))
  else useResults.getState().say(`${opened.why} The bench is as it was.`)
}

function openedBeside(hash?: string): Axis | null {
  const axis = linkedBeside(hash)
  if (axis === undefined)
    useResults.getState().say('The second axis of this link cannot be read; its scenario is on the bench.')
  return axis ?? null
}

function restoreView() {
  try {
    const kept = JSON.parse(read(VIEW_KEY) ?? '{}')
    useView.setState(Object.fromEntries(KEPT.filter((key) => SOUND[key](kept[key])).map((key) => [key, kept[key]])))
  } catch {
    // Settings that cannot be read are left at their defaults.
  }
}

/** Ids of lessons that this version does not know are kept: another one may. */
function restoreLessons() {
  const ids = (value: unknown) => (Array.isArray(value) ? value.filter((id) => typeof id === 'string') : [])
  try {
    const kept = JSON.parse(read(LESSONS_KEY) ?? '{}')
    useLessons.setState({ done: ids(kept?.done), tried: ids(kept?.tried) })
  } catch {
    // Progress that cannot be read starts anew.
  }
}

/** Whether the play may run once by itself: on the first visit, where the browser can tell the next one from it. */
export function isFirstPlay(): boolean {
  if (read(PLAYED_KEY) !== null) return false
  write(PLAYED_KEY, '1')
  return read(PLAYED_KEY) !== null
}

/** Storage is refused in some private windows; the bench then forgets when it is closed. */
function read(key: string): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

function write(key: string, value: string) {
  try {
    localStorage.setItem(key, value)
  } catch {
    // See read.
  }
}
