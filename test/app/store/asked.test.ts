import { describe, expect, it } from 'vitest'
import { askedOf } from '../../../app/store/asked.ts'

/** A question whose answers the test gives by hand. */
function byHand() {
  const calls: { tell(answer: string): boolean; done(): void; fail(error: Error): void }[] = []
  const store = askedOf<string, string>((_, __, tell) => new Promise((done, fail) => calls.push({ tell, done, fail })))
  return { store, calls }
}
const turn = () => new Promise((rest) => setTimeout(rest))

describe('what is asked of a strategy', () => {
  it('grows, ends, and keeps the answers of the others', async () => {
    const { store, calls } = byHand()
    store.getState().ask('q', 'current-clamp', 1)
    expect(store.getState().asking).toBe('current-clamp')
    expect(calls[0]!.tell('half')).toBe(true)
    expect(store.getState().answers).toEqual({ 'current-clamp': 'half' })
    calls[0]!.done()
    await turn()
    expect(store.getState().asking).toBeNull()
    store.getState().ask('q', 'sensed-force', 1)
    calls[1]!.tell('other')
    expect(store.getState().answers).toMatchObject({ 'current-clamp': 'half', 'sensed-force': 'other' })
  })

  it('stops: what comes later is not listened to, neither answer nor failure', async () => {
    const { store, calls } = byHand()
    store.getState().ask('q', 'current-clamp', 1)
    calls[0]!.tell('half')
    store.getState().stop()
    expect(calls[0]!.tell('whole')).toBe(false)
    calls[0]!.fail(new Error('stopped'))
    await turn()
    expect(store.getState()).toMatchObject({ answers: { 'current-clamp': 'half' }, asking: null, message: '' })
  })

  it('says why it failed', async () => {
    const { store, calls } = byHand()
    store.getState().ask('q', 'current-clamp', 1)
    calls[0]!.fail(new Error('because'))
    await turn()
    expect(store.getState()).toMatchObject({ asking: null, message: 'because' })
  })

  it('forgets what was answered about another thing', () => {
    const { store, calls } = byHand()
    store.getState().ask('q', 'current-clamp', 1)
    calls[0]!.tell('old')
    store.getState().ask('q', 'sensed-force', 2)
    expect(calls[0]!.tell('older')).toBe(false)
    expect(store.getState().answers['current-clamp']).toBeUndefined()
    expect(store.getState().about).toBe(2)
  })
})
