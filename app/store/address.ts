/**
 * The address: the scenario for sharing, `#s=LINK`, the axis beside that of the bench, `&beside=LINK`, and behind it the open view,
 * `&view=report`; the bench is not named. Going to
 * another view is a step of the browser's history, an edit is not: back and forward move between views, and the scenario that is on
 * the bench goes along. A link that is opened in the running page begins a new era: going back beyond it opens what stood there.
 */
import type { Scenario } from '../../sim/index.ts'
import { axisToLink, linkToAxis, linkToScenario, type Opened, scenarioToLink } from './link.ts'
import { fetchOthers, lacksJob } from './others.ts'
import { type Axis, useScenario } from './scenario.ts'
import { useView } from './view.ts'

/** Where the person is. */
interface Place {
  view: string
  slide: number
}

const BENCH: Place = { view: 'bench', slide: 0 }

/** What stands on the bench. */
interface Standing {
  scenario: Scenario
  beside: Axis | null
}

/** The address that opens the bench with this scenario, and this axis beside it. */
export const addressOf = (standing: Standing) => addressWith(standing, BENCH)

function addressWith({ scenario, beside }: Standing, { view, slide }: Place): string {
  const address = new URL(location.href)
  const axis = beside && axisToLink(beside)
  const place = view === BENCH.view ? '' : `&view=${encodeURIComponent(view)}${slide > 0 ? `&slide=${slide + 1}` : ''}`
  address.hash = `s=${scenarioToLink(scenario)}${axis ? `&beside=${axis}` : ''}${place}`
  return address.href
}

const entry = (name: string, hash = location.hash) => new RegExp(`^#(?:.*&)?${name}=([^&]*)`).exec(hash)?.[1]

function placeInAddress(): Place {
  const slide = Number(entry('slide') ?? 1) - 1
  try {
    return {
      view: decodeURIComponent(entry('view') ?? BENCH.view),
      slide: Number.isInteger(slide) && slide >= 0 ? slide : 0,
    }
  } catch {
    return BENCH
  }
}

/** What the address, or one that was there before, holds; null: no scenario. */
export function linked(hash?: string): Opened | null {
  const link = entry('s', hash)
  return link === undefined ? null : linkToScenario(link)
}

/** The axis that the address puts beside that of its scenario; null: none, undefined: it cannot be read. */
export function linkedBeside(hash?: string): Axis | null | undefined {
  const link = entry('beside', hash)
  return link === undefined ? null : (linkToAxis(link) ?? undefined)
}

const NOT_FETCHED = 'The job of this link could not be fetched.'

/** Counts the links that were opened in the running page; each entry of the history carries its count. */
let era = 0
const eraOf = (state: unknown) =>
  typeof state === 'object' && state !== null && 'era' in state && typeof state.era === 'number' ? state.era : null

/** Writes what stands on the bench and the place into the present entry of the history. */
export function keepAddress() {
  history.replaceState({ era }, '', addressWith(useScenario.getState(), useView.getState()))
}

/** The view changes without a step in the history. */
let following = false

/** Another view in the place of the present one, as if that had never been open. */
export function replaceView(view: string): void {
  follow({ view, slide: 0 })
  keepAddress()
}

function follow(place: Place): void {
  following = true
  useView.setState({ ...place, playing: false })
  following = false
}

/** Opens the view of the address and keeps both together from now on. `take` is handed what a link opened later holds, and its address. */
export function startAddress(take: (opened: Opened, hash: string) => void): void {
  era = eraOf(history.state) ?? 0
  history.replaceState({ era }, '', location.href)
  follow(placeInAddress())
  const put = (opened: Opened | null, hash: string) => {
    if (opened) take(opened, hash)
    keepAddress()
  }
  /** Puts what the address holds on the bench, once its job is here; where another link was opened meanwhile it is too late for it. */
  const open = async () => {
    const arrived = era
    const { hash } = location
    const opened = linked(hash)
    if (!opened || !lacksJob(opened)) return put(opened, hash)
    const fetched = await fetchOthers().then(
      () => linked(hash),
      () => ({ ok: false as const, why: NOT_FETCHED }),
    )
    if (era === arrived) put(fetched, hash)
  }
  /** Two events may tell of one step; the first leaves nothing to do for the second. */
  const arrive = () => {
    const reached = eraOf(history.state)
    if (document.fullscreenElement) document.exitFullscreen().catch(() => {})
    follow(placeInAddress())
    if (reached === era) return keepAddress()
    era = reached ?? era + 1
    void open()
  }
  window.addEventListener('popstate', arrive)
  window.addEventListener('hashchange', arrive)
  useView.subscribe((now, before) => {
    if (following || (now.view === before.view && now.slide === before.slide)) return
    if (now.view === before.view) keepAddress()
    else history.pushState({ era }, '', addressWith(useScenario.getState(), now))
  })
}
