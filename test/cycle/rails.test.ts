import { describe, expect, it } from 'vitest'
import { CURRENT_LOOP, IN_ORDER, NUMBERS, POSITION_LOOP, Rails, TRAVEL } from '../../sim/cycle/rails.ts'

function railsOf(reach: number): Rails {
  return Object.assign(new Rails(), { reach })
}

/** Once a current sample, as a bench asks. */
const check = (rails: Rails, time: number, travel: number, current: number, servo: number, bridge: number) =>
  rails.outside(time, travel, current) || rails.bangs(time, servo, bridge)

/** Feeds a loop that changes from limit to limit every `half` seconds, the other one at rest. */
function bang(half: number, flips: number, loop: 'servo' | 'bridge'): Rails {
  const rails = railsOf(1)
  for (let n = 0; n < flips; n++) {
    const side = n % 2 ? -1 : 1
    // Between two changes it leaves its limit for a while, as a loop does.
    for (const saturated of [side, 0, side])
      if (check(rails, 0.1 + n * half, 0, 0, loop === 'servo' ? saturated : 0, loop === 'bridge' ? saturated : 0))
        return rails
  }
  return rails
}

describe('Rails', () => {
  it('hold a quiet run', () => {
    const rails = railsOf(1)
    for (let k = 0; k < 10_000; k++) expect(check(rails, k * 1e-4, 0.5 * Math.sin(k), 3, 1, 0)).toBe(false)
    expect(rails.state.left).toBeNaN()
    expect(rails.state.cause).toBe(IN_ORDER)
  })

  it.each([
    [Number.NaN, 0],
    [Infinity, 0],
    [0, Number.NaN],
    [0, -Infinity],
  ])('are left where travel %d or current %d is no number', (travel, current) => {
    const rails = railsOf(1)
    expect(check(rails, 0.25, travel, current, 0, 0)).toBe(true)
    expect([rails.state.left, rails.state.cause]).toEqual([0.25, NUMBERS])
  })

  it('are left by a jaw beyond its reach, on either side', () => {
    for (const travel of [1.001, -1.001]) {
      const rails = railsOf(1)
      expect(check(rails, 0.1, 0.999 * Math.sign(travel), 0, 0, 0)).toBe(false)
      expect(check(rails, 0.2, travel, 0, 0, 0)).toBe(true)
      expect([rails.state.left, rails.state.cause]).toEqual([0.2, TRAVEL])
    }
  })

  it('are left by a loop that bangs from limit to limit, from its first change on', () => {
    for (const [loop, cause] of [
      ['servo', POSITION_LOOP],
      ['bridge', CURRENT_LOOP],
    ] as const) {
      const rails = bang(0.005, 40, loop)
      expect(rails.state.cause).toBe(cause)
      expect(rails.state.left).toBeCloseTo(0.1, 9)
    }
  })

  it('bear a few changes, and many slow ones', () => {
    expect(bang(0.005, 8, 'servo').state.left).toBeNaN()
    expect(bang(0.013, 200, 'servo').state.left).toBeNaN()
  })
})
