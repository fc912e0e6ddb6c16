/**
 * The address: the scenario for sharing, `#s=LINK`, the axis beside that of the bench, `&beside=LINK`, and behind it the open view,
 * `&view=report`; the bench is not named. Going to another view is a step of the browser's history, an edit is not: back and forward
 * move between views, and the scenario that is on the bench goes along. A link that is opened in the running page begins a new era:
 * going back beyond it opens what stood there. What packs links is fetched when one is needed; until then the address of the bench as
 * a browser that keeps nothing opens it names no scenario.
 */
import type { Scenario } from '../../sim/index.ts'
import type { Opened } from './link.ts'
import { fetchOthers, lacksJob } from './others.ts'
import { fetchPacking, packing } from './packing.ts'
import { type Axis, first, useScenario } from './scenario.ts'
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

/** The address that opens the bench with this scenario, and this axis beside it. Rejects where what packs it cannot be fetched. */
export async function addressOf(standing: Standing): Promise<string> {
  await fetchPacking()
  return addressWith(standing, BENCH)
}

function addressWith({ scenario, beside }: Standing, { view, slide }: Place): string {
  const address = new URL(location.href)
  const links = packing()
  const axis = beside && links?.axisToLink(beside)
  address.hash = [
    ...(links ? [`s=${links.scenarioToLink(scenario)}`] : []),
    ...(axis ? [`beside=${axis}`] : []),
    ...(view === BENCH.view ? [] : [`view=${encodeURIComponent(view)}`]),
    ...(view === BENCH.view || slide === 0 ? [] : [`slide=${slide + 1}`]),
  ].join('&')
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

export const holdsLink = (hash?: string) => entry('s', hash) !== undefined || entry('beside', hash) !== undefined

/** What the address, or one that was there before, holds; null: no scenario. What unpacks links must be here. */
export function linked(hash?: string): Opened | null {
  const link = entry('s', hash)
  return link === undefined ? null : packing()!.linkToScenario(link)
}

/** The axis that the address puts beside that of its scenario; null: none, undefined: it cannot be read. What unpacks links must be here. */
export function linkedBeside(hash?: string): Axis | null | undefined {
  const link = entry('beside', hash)
  return link === undefined ? null : (packing()!.linkToAxis(link) ?? undefined)
}

/** What an address holds, once what reads it is here. */
async function fetchLinked(hash: string): Promise<Opened | null> {
  if (!holdsLink(hash)) return null
  try {
    await fetchPacking()
  } catch {
    return { ok: false, why: 'What reads links could not be fetched.' }
  }
  const opened = linked(hash)
  if (!opened || !lacksJob(opened)) return opened
  return fetchOthers().then(
    () => linked(hash),
    () => ({ ok: false, why: 'The job of this link could not be fetched.' }),
  )
}

/** Counts the links that were opened in the running page; each entry of the history carries its count. */
let era = 0
const eraOf = (state: unknown) =>
  typeof state === 'object' && state !== null && 'era' in state && typeof state.era === 'number' ? state.era : null

/** The bench as a browser that keeps nothing opens it; an entry of the history that names no scenario may stand for it. */
function isUntouched() {
  const { scenario, beside } = useScenario.getState()
  return scenario === first && !beside
}

const untouchedIn = (state: unknown) =>
  typeof state === 'object' && state !== null && 'untouched' in state && state.untouched === true

/** Writes what stands on the bench and the place into the present entry of the history, once that can be packed. */
export function keepAddress() {
  const place = useView.getState()
  const untouched = isUntouched() && !packing()
  if (packing() || (untouched && place.view === BENCH.view))
    return history.replaceState({ era, untouched }, '', addressWith(useScenario.getState(), place))
  history.replaceState({ era, untouched }, '', location.href)
  fetchPacking().then(keepAddress, () => {}) // where it cannot be fetched the next change tries again
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
  history.replaceState({ era, untouched: isUntouched() && !holdsLink() }, '', location.href)
  follow(placeInAddress())
  const put = (opened: Opened | null, hash: string) => {
    if (opened) take(opened, hash)
    keepAddress()
  }
  /** Puts what the address holds on the bench, once it can be read; where another link was opened meanwhile it is too late for it. */
  const open = async (usual: Opened | null) => {
    const arrived = era
    const { hash } = location
    const opened = await fetchLinked(hash)
    if (era === arrived) put(opened ?? usual, hash)
  }
  /** Two events may tell of one step; the first leaves nothing to do for the second. */
  const arrive = () => {
    const reached = eraOf(history.state)
    if (document.fullscreenElement) document.exitFullscreen().catch(() => {})
    follow(placeInAddress())
    if (reached === era) return keepAddress()
    era = reached ?? era + 1
    void open(untouchedIn(history.state) ? { ok: true, scenario: first } : null)
  }
  window.addEventListener('popstate', arrive)
  window.addEventListener('hashchange', arrive)
  useView.subscribe((now, before) => {
    if (following || (now.view === before.view && now.slide === before.slide)) return
    if (now.view === before.view) keepAddress()
    else {
      history.pushState({ era }, '', addressWith(useScenario.getState(), now))
      if (!packing()) keepAddress()
    }
  })
}
