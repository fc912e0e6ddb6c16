import { describe, expect, it } from 'vitest'
import { liveFrame, looksAlike } from '../../../../app/views/live/frame.ts'
import { BACK, happenings, LiveHistory } from '../../../../app/views/live/history.ts'
import { channelAt } from '../../../../app/views/live/pictures/seen.ts'
import {
  CHANNELS,
  isHunting,
  LivePlant,
  type LiveState,
  liveSentence,
  PRESETS,
  wordingOf,
} from '../../../../sim/index.ts'

const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!

function gripped(): LivePlant {
  const grip = new LivePlant(scenario, 'current-clamp')
  grip.act('close')
  grip.advance(0.8)
  return grip
}

/** Events and facts beside those that it has. */
const changed = (state: LiveState, change: Partial<LiveState>): LiveState => ({
  ...state,
  ...change,
  events: { ...state.events, ...change.events },
  facts: { ...state.facts, ...change.facts },
})

describe('the picture of the live plant', () => {
  it('is drawn again as soon as anything is seen to differ, and not for the noise of rest', () => {
    const { state } = gripped()
    const frame = liveFrame(scenario, state)
    expect(looksAlike(frame, liveFrame(scenario, state))).toBe(true)
    expect(looksAlike(frame, { ...frame, travel: frame.travel + 1e-8, force: frame.force * 1.0001 })).toBe(true)
    const driven = { ...frame.contacts.driven, pad: frame.contacts.driven.pad + 1e-6 }
    const changes = [
      { travel: frame.travel + 1e-6 },
      { motorTravel: frame.motorTravel + 1e-6 },
      { force: frame.force * 1.002 },
      { farForce: 0 },
      { sag: 1e-5 },
      { current: frame.current + 0.1 },
      { turn: 0.01 },
      { supported: !frame.supported },
      { crack: 'driven' as const },
      { marked: ['far' as const] },
      { unstable: true },
      { fallen: 0.1 },
      { arm: { ...frame.arm, up: 1 } },
      { contacts: { ...frame.contacts, driven } },
    ]
    for (const change of changes) expect(looksAlike(frame, { ...frame, ...change }), JSON.stringify(change)).toBe(false)
  })
})

describe('The live plant in words', () => {
  const { state } = gripped()
  const hunting = { ...state.figures, reversals: 100, ripple: 5 }
  const words = (change: Partial<LiveState>, travel = 0.01) => {
    const now = changed(state, change)
    const at = (id: string) => (id === 'travel' ? travel : channelAt(scenario, now)(id))
    return liveSentence(scenario, now, at, wordingOf('si'))
  }

  it('says what drive and part do', () => {
    expect(words({})).toBe('Gripping. The part stands on its support.')
    expect(words({ facts: { supported: false } })).toBe('Gripping. The part hangs in the jaws.')
    expect(words({ engaged: false })).toBe('Closing. The part stands on its support.')
    expect(words({ phase: 'returning' })).toBe('Opening. The part stands on its support.')
    expect(words({ phase: 'returning' }, 0)).toBe('Open. The part stands on its support.')
    expect(words({ phase: 'holding' })).toBe('The jaws are kept where they stand. The part stands on its support.')
    expect(words({ powered: false, events: { lost: 0.5 } })).toBe(
      'No power: the windings are open. The part is no longer in the jaws.',
    )
    expect(words({ events: { crack: 0.4 } })).toBe('Gripping. The broken part stands on its support.')
    expect(words({ left: 'numbers' })).toBe('The plant has left its rails and stands still: start anew.')
  })

  it('calls it hunting only while the jaws grip a part under power', () => {
    expect(words({ figures: hunting })).toBe('Hunting: the loop does not come to rest. The part stands on its support.')
    for (const change of [{ inHand: false }, { powered: false }, { phase: 'returning' as const }])
      expect(isHunting(changed(state, { figures: hunting, ...change }))).toBe(false)
  })
})

describe('The live plant in the picture', () => {
  it('is the newest sample, with what has become of the part', () => {
    const grip = gripped()
    const frame = liveFrame(scenario, grip.state)
    // A sample lies within three times the rms about the mean of those before it.
    expect(Math.abs(frame.force - grip.state.figures.effort)).toBeLessThan(3 * grip.state.figures.ripple)
    expect(frame.contacts.driven.pad).toBeGreaterThan(0)
    expect(frame).toMatchObject({ supported: true, fallen: null, crack: null, marked: [], unstable: false })
    const hurt = {
      events: { lost: 0.5, crack: 0.4 },
      facts: { supported: false, nearMarked: true, farMarked: false, crackedFar: false },
      left: 'travel' as const,
    }
    expect(liveFrame(scenario, changed(grip.state, hurt))).toMatchObject({
      supported: false,
      fallen: grip.time - 0.5,
      crack: 'driven',
      marked: ['driven'],
      unstable: true,
    })
  })

  it('shows the arm as it is shaken', () => {
    const grip = gripped()
    grip.act('up')
    grip.advance(0.02)
    const { arm } = liveFrame(scenario, grip.state)
    expect(arm.up).toBeGreaterThan(0)
    expect(arm.across).toBe(0)
  })
})

describe('What has been', () => {
  it('is kept for ten minutes, and not longer than needed', () => {
    const history = new LiveHistory(scenario)
    const row = new Float64Array(CHANNELS.length)
    const second = CHANNELS.map(() => new Float64Array(4000))
    for (let s = 0; s < BACK + 20; s++) {
      for (let n = 0; n < 4000; n++) second[0]![n] = s + n / 4000
      row[0] = s + 1
      history.append(second, row)
    }
    const newest = row[0]!
    expect(newest - history.oldest).toBeGreaterThanOrEqual(BACK)
    expect(newest - history.oldest).toBeLessThan(BACK + 5)
    const { time } = history.look(newest - 500, newest - 490)
    expect(time[0]!).toBeLessThanOrEqual(newest - 500)
    expect(time.at(-1)!).toBeGreaterThanOrEqual(newest - 490)
    expect(time.length).toBeGreaterThan(1000)
  }, 60_000)

  it('is marked where something happened to the part', () => {
    const { state } = gripped()
    expect(happenings(scenario, null, state)).toEqual([])
    expect(
      happenings(scenario, state, changed(state, { events: { crack: 0.6, lost: 0.7 } })).map(({ label }) => label),
    ).toEqual(['breaks', 'lost'])
    expect(happenings(scenario, changed(state, { engaged: false }), state).map(({ label }) => label)).toEqual([
      'takes over',
    ])
  })
})
