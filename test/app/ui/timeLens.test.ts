import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildLens, flatLens } from '../../../app/ui/timeLens.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })
const scene = fc
  .record({
    duration: fc.double({ min: 0.01, max: 600, noNaN: true }),
    contacts: fc.array(share, { maxLength: 4 }),
    moves: fc.array(fc.tuple(share, share), { maxLength: 4 }),
  })
  .map(({ duration, contacts, moves }) => ({
    duration,
    contacts: contacts.map((at) => at * duration),
    moves: moves.map(([a, b]) => ({ start: Math.min(a, b) * duration, end: Math.max(a, b) * duration })),
  }))

describe('time lens', () => {
  it('comes back to the same time from every place on the bar, and to the same place from every time', () => {
    fc.assert(
      fc.property(scene, share, (input, at) => {
        const lens = buildLens(input)
        const time = at * input.duration
        expect(Math.abs(lens.toTime(lens.toDisplay(time)) - time)).toBeLessThanOrEqual(1e-12 * input.duration)
        expect(Math.abs(lens.toDisplay(lens.toTime(at)) - at)).toBeLessThanOrEqual(1e-11)
      }),
      { numRuns: 2000 },
    )
  })

  it('grows strictly', () => {
    fc.assert(
      fc.property(scene, share, share, (input, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-9)
        const lens = buildLens(input)
        const [low, high] = [Math.min(a, b) * input.duration, Math.max(a, b) * input.duration]
        expect(lens.toDisplay(low)).toBeLessThan(lens.toDisplay(high))
      }),
      { numRuns: 2000 },
    )
  })

  it('has the ends of the run at the ends of the bar, and holds times beyond them', () => {
    const lens = buildLens({ duration: 1.5, contacts: [0, 1.5], moves: [{ start: 1.4, end: 1.9 }] })
    expect([lens.toDisplay(0), lens.toDisplay(1.5), lens.toTime(0), lens.toTime(1)]).toEqual([0, 1, 0, 1.5])
    expect([lens.toDisplay(-1), lens.toDisplay(7), lens.toTime(-0.1), lens.toTime(1.2)]).toEqual([0, 1, 0, 1.5])
  })

  it('has its rate as slope: play seconds for each simulated second', () => {
    const lens = buildLens({ duration: 1.5, contacts: [0.23], moves: [{ start: 0.8, end: 1.2 }] })
    for (const time of [0.1, 0.22, 0.25, 0.29, 0.5, 0.79, 1, 1.21]) {
      const slope = ((lens.toDisplay(time + 1e-6) - lens.toDisplay(time - 1e-6)) / 2e-6) * lens.seconds
      expect(slope).toBeCloseTo(lens.rate(time), 3)
    }
  })

  it('makes milliseconds about contact into seconds of play, of several contacts close by only once', () => {
    const one = buildLens({ duration: 1.5, contacts: [0.23], moves: [] })
    const three = buildLens({ duration: 1.5, contacts: [0.23, 0.2301, 0.231], moves: [] })
    expect(one.rate(0.235)).toBeGreaterThan(20)
    expect(one.rate(1)).toBe(1)
    expect(three.seconds - one.seconds).toBeLessThan(0.1)
  })

  it('slows arm moves, but not without end', () => {
    const short = buildLens({ duration: 2, contacts: [], moves: [{ start: 1, end: 1.4 }] })
    expect(short.rate(1.2)).toBeCloseTo(5)
    const long = buildLens({ duration: 120, contacts: [], moves: [{ start: 10, end: 100 }] })
    expect(long.seconds).toBeLessThan(16)
  })

  it('is simulated time where it is switched off', () => {
    const flat = flatLens(3)
    expect([flat.toDisplay(0.75), flat.toTime(0.5), flat.rate(2), flat.seconds]).toEqual([0.25, 1.5, 1, 3])
  })
})
