/** What is said of a live press, closure and web in each state that it can come to, in both systems of units. */
import { describe, expect, it } from 'vitest'
import {
  ALL_PRESETS,
  actTitle,
  CUT,
  inPlainSpaces,
  jobOf,
  jobWords,
  LivePlant,
  type LiveState,
  liveSentence,
  type Scenario,
  shakeOf,
  wordingOf,
} from '../../sim/index.ts'
import { metricUnits } from './support.ts'

const presetOf = (id: string): Scenario => ALL_PRESETS.find((preset) => preset.id === id)!.scenario

/** A state of a job at rest, changed. */
function stateOf(scenario: Scenario, change: Partial<LiveState>): LiveState {
  const state = new LivePlant(scenario, 'current-clamp').state
  return {
    ...state,
    ...change,
    events: { ...state.events, ...change.events },
    facts: { ...state.facts, ...change.facts },
  }
}

const WORKING = { phase: 'working', engaged: true, inHand: true } as const

const CASES: [id: string, Partial<LiveState>, Record<string, number>, string][] = [
  ['cast-arm', {}, {}, 'The ram stands back. The bushing waits on its bore.'],
  [
    'cast-arm',
    { ...WORKING, engaged: false, events: { touch: 1 }, facts: { free: false } },
    { travel: 0.03, depth: 0.005, speed: 0.01 },
    'Pressing. The bushing is 5 mm deep.',
  ],
  [
    'cast-arm',
    { ...WORKING, events: { touch: 1 }, facts: { free: false } },
    { travel: 0.03, depth: 0.005 },
    'The ram presses and stands still. The bushing is jammed at 5 mm of 12.2 mm.',
  ],
  [
    'cast-arm',
    { phase: 'returning', events: { touch: 1, seat: 2, over: 2 } },
    { travel: 0.01, depth: 0.0122 },
    'Drawing back. The bushing sits on its shoulder at 12.2 mm. It has been forced over its limit.',
  ],
  ['jar-lid', {}, {}, 'The head is back. The closure is not on its thread yet.'],
  [
    'jar-lid',
    { ...WORKING, events: { start: 1, touch: 2 }, facts: { onThread: true } },
    { travel: 9, preload: 300 },
    'Tightening. The closure presses its liner with 300 N.',
  ],
  [
    'jar-lid',
    { phase: 'returning', events: { start: 1, touch: 2, over: 2 }, facts: { onThread: true, held: false } },
    { travel: 4, preload: 300 },
    'Turning back. The closure presses its liner with 300 N. It has had more than its most torque. The chuck has let go of it.',
  ],
  [
    'jar-lid',
    { ...WORKING, events: { jam: 1 } },
    { travel: 5 },
    'Tightening. The closure is jammed on the wrong turn of its thread.',
  ],
  [
    'jar-lid',
    { ...WORKING, events: { strip: 1 } },
    { travel: 9 },
    'Tightening. The thread of the closure has stripped.',
  ],
  [
    'tray-film',
    { phase: 'holding', facts: { hangs: true, runs: true } },
    { slack: 0.01, lineSpeed: 0.6 },
    'The roll keeps pace with the line. The web hangs slack by 10 mm; the line runs at 600 mm/s.',
  ],
  [
    'tray-film',
    { ...WORKING, facts: { hangs: false, runs: false } },
    { tension: 18 },
    'Pulling. The web is taut; the line stands.',
  ],
  [
    'tray-film',
    { ...WORKING, facts: { hangs: false, runs: false } },
    { tension: 30 },
    'Pulling. The web is stretched; the line stands.',
  ],
  [
    'tray-film',
    { ...WORKING, facts: { hangs: false, runs: false } },
    { tension: 5 },
    'Pulling. The web has less than the least tension; the line stands.',
  ],
  [
    'tray-film',
    { powered: false, events: { torn: 1 }, facts: { runs: true } },
    { lineSpeed: 0.6 },
    'No power: the windings are open. The web has torn; the line runs at 600 mm/s.',
  ],
]

describe('a live plant in words', () => {
  it.each(CASES)('%s %#', (id, change, now, said) => {
    const scenario = presetOf(id)
    const at = (channel: string) => now[channel] ?? 0
    const state = stateOf(scenario, change)
    expect(inPlainSpaces(liveSentence(scenario, state, at, wordingOf('si')))).toBe(said)
    const us = liveSentence(scenario, state, at, wordingOf('us'))
    expect(metricUnits(us), us).toEqual([])
  })

  it('says of each a loop that hunts, and that the plant has left its rails', () => {
    for (const id of ['cast-arm', 'jar-lid', 'tray-film']) {
      const scenario = presetOf(id)
      const figures = { effort: 10, ripple: 5, current: 1, reversals: 100, peak: 20 }
      const say = (change: Partial<LiveState>) =>
        liveSentence(scenario, stateOf(scenario, change), () => 0, wordingOf('si'))
      expect(say({ ...WORKING, figures })).toMatch(/^Hunting: the loop does not come to rest\. The /)
      expect(say({ ...WORKING, figures, inHand: false })).not.toMatch(/Hunting/)
      expect(say({ left: 'travel' })).toBe('The plant has left its rails and stands still: start anew.')
    }
  })

  it('has words for every act, group and event of every job', () => {
    for (const { scenario } of ALL_PRESETS) {
      const { live } = jobOf(scenario)
      const words = jobWords(scenario).live
      expect(Object.keys(words.groups).sort()).toEqual(live.groups.map(({ id }) => id).sort())
      expect(Object.keys(words.events).sort()).toEqual(live.events.map(({ id }) => id).sort())
      const acts = live.groups.flatMap((group) => group.acts)
      expect(Object.keys(words.acts).sort()).toEqual(acts.map(({ id }) => id).sort())
      expect(acts.map(({ id }) => id)).not.toContain(CUT)
      for (const { id, shake } of acts)
        for (const system of ['si', 'us'] as const) {
          const title = actTitle(scenario, id, shake ? shakeOf(scenario, shake) : null, wordingOf(system))
          expect(title).toMatch(/^$|^[A-Z0-9].*\.$/)
          if (system === 'us') expect(metricUnits(title), title).toEqual([])
        }
      if (live.before !== null) expect(Object.keys(words.acts)).toContain(live.before)
    }
  })
})
