/** What a person kept in the browser with version 1 of the format comes back with version 2: payloads written by the bench as it was. */
import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { axisToLink, scenarioToLink } from '../../../app/store/link.ts'
import { AXIS_PRESETS, checkScenario, PRESETS } from '../../../sim/index.ts'
import { CAP_PRESETS } from '../../../sim/others.ts'

const FIRST: { id: string; link: string; scenario: object }[] = JSON.parse(
  readFileSync(new URL('../../scenario/fixtures/version-1.json', import.meta.url), 'utf8'),
)
const busy = FIRST.find(({ id }) => id === 'busy')!
const teapot = FIRST.find(({ id }) => id === 'teapot')!

const lifted = (scenario: object) => {
  const checked = checkScenario(scenario)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

/** The bench's stores, read anew in a browser that holds this. */
async function opened(kept: Record<string, string>, hash = '') {
  const entries = new Map(Object.entries(kept))
  const storage = {
    getItem: (key: string) => entries.get(key) ?? null,
    setItem: (key: string, value: string) => entries.set(key, value),
  }
  const listeners = new Map<string, () => void>()
  vi.stubGlobal('localStorage', storage)
  vi.stubGlobal('sessionStorage', storage)
  vi.stubGlobal('location', { hash, href: `https://bench.test/${hash}` })
  vi.stubGlobal('history', { state: null, replaceState: () => {} })
  // What is kept is written when the page is left; a timer would outlive its test.
  const later = () => 0
  vi.stubGlobal('window', {
    addEventListener: (name: string, run: () => void) => listeners.set(name, run),
    setTimeout: later,
  })
  const { fetchKept, startKeeping } = await import('../../../app/store/keep.ts')
  const { useScenario } = await import('../../../app/store/scenario.ts')
  const { useResults } = await import('../../../app/store/results.ts')
  await fetchKept()
  startKeeping()
  const { scenario, beside, setBeside } = useScenario.getState()
  return { scenario, beside, setBeside, notice: useResults.getState().notice, entries, listeners }
}

beforeEach(() => vi.resetModules())
afterEach(() => {
  vi.unstubAllGlobals()
  vi.resetModules()
})

describe('what version 1 left in the browser', () => {
  it('its scenario comes back whole, and is kept as version 2 when the page is left', async () => {
    const { scenario, notice, entries, listeners } = await opened({ 'jawbench.scenario': busy.link })
    expect(scenario).toEqual(lifted(busy.scenario))
    expect(notice).toBeNull()
    listeners.get('pagehide')!()
    expect(JSON.parse(entries.get('jawbench.scenario')!)).toMatchObject({ version: 2 })
    vi.resetModules()
    const again = await opened({ 'jawbench.scenario': entries.get('jawbench.scenario')! })
    expect(again.scenario).toEqual(lifted(busy.scenario))
  })

  it('a link goes before it', async () => {
    const { scenario, notice } = await opened({ 'jawbench.scenario': busy.link }, `#s=${teapot.link}`)
    expect(scenario).toEqual(lifted(teapot.scenario))
    expect(notice).toBeNull()
  })

  it('sections that stood open stay open, the gauge in its new place', async () => {
    const kept = ['strategies', 'strategies.sensedForce', 'strategies.sensedForce.sensor', 'jaws.friction']
    vi.stubGlobal('localStorage', { getItem: () => JSON.stringify(kept), setItem: () => {} })
    const { useFolds } = await import('../../../app/parameters/folds.ts')
    expect(useFolds.getState().open).toEqual(['strategies', 'strategies.sensedForce', 'sensors.gauge', 'jaws.friction'])
  })
})

describe('what packs links', () => {
  const packed = async () => (await import('../../../app/store/packing.ts')).packing() !== null

  it('is not fetched where there is no link, neither for a scenario that is kept', async () => {
    const { listeners, entries } = await opened({})
    listeners.get('pagehide')!()
    expect(await packed()).toBe(false)
    vi.resetModules()
    const again = await opened(Object.fromEntries(entries))
    expect(again.notice).toBeNull()
    expect(await packed()).toBe(false)
    vi.resetModules()
    await opened({}, `#s=${teapot.link}`)
    expect(await packed()).toBe(true)
  })

  it('takes no text for a scenario that is none', async () => {
    for (const text of ['{', '[]', '2.', '2.a.b', 'null']) {
      const { scenario, notice } = await opened({ 'jawbench.scenario': text, 'jawbench.beside': text })
      expect(scenario.name, text).toBe(PRESETS[0]!.scenario.name)
      expect(notice).toBeNull()
      vi.resetModules()
    }
  })
})

describe('a job other than gripping, which is not there when the page opens', () => {
  const lid = CAP_PRESETS[0]!.scenario
  const link = scenarioToLink(lid)

  it('comes back from the browser and from a link, and "reset" goes back to its preset', async () => {
    const kept = await opened({ 'jawbench.scenario': link })
    expect(kept.scenario).toEqual(lid)
    expect(kept.notice).toBeNull()
    vi.resetModules()
    const linked = await opened({ 'jawbench.scenario': busy.link }, `#s=${link}`)
    expect(linked.scenario).toEqual(lid)
    const { useScenario } = await import('../../../app/store/scenario.ts')
    expect(useScenario.getState().base).toEqual(lid)
  })

  it('is not fetched for a grip', async () => {
    await opened({ 'jawbench.scenario': busy.link }, `#s=${teapot.link}`)
    const { useOthers } = await import('../../../app/store/others.ts')
    expect(useOthers.getState().here).toBe(false)
    const { allAxes, jobTaking } = await import('../../../sim/index.ts')
    expect(allAxes().every(({ actuator }) => jobTaking(actuator.kind) === 'grip')).toBe(true)
  })
})

describe('the second axis', () => {
  it('comes back with the scenario, and a link says whether there is one', async () => {
    const [axis] = AXIS_PRESETS
    const first = await opened({ 'jawbench.scenario': teapot.link })
    expect(first.beside).toBeNull()
    first.setBeside({ title: axis!.title, actuator: axis!.actuator })
    first.listeners.get('pagehide')!()
    const kept = Object.fromEntries(first.entries)
    vi.resetModules()
    expect((await opened(kept)).beside).toEqual({ title: axis!.title, actuator: axis!.actuator })
    vi.resetModules()
    expect((await opened(kept, `#s=${teapot.link}`)).beside).toBeNull()
    vi.resetModules()
    const link = axisToLink(axis!)!
    const linked = await opened({}, `#s=${teapot.link}&beside=${link}&view=report`)
    expect(linked.beside).toEqual({ title: axis!.title, actuator: axis!.actuator })
    vi.resetModules()
    const once = await opened({ 'jawbench.scenario': teapot.link, 'jawbench.beside': link }) // as the bench kept it once
    expect(once.beside).toEqual({ title: axis!.title, actuator: axis!.actuator })
    vi.resetModules()
    const cut = await opened(kept, `#s=${teapot.link}&beside=${link.slice(0, -2)}`)
    expect(cut.beside).toBeNull()
    expect(cut.notice).toMatch(/second axis of this link cannot be read/)
  })
})
