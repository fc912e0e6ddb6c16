import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { core, run } from '../../sim/cli/core.ts'
import { astrayIn, followsAt } from '../../sim/log/astray.ts'
import { identify } from '../../sim/log/identify.ts'
import type { Measured } from '../../sim/log/measured.ts'
import { astrayText } from '../../sim/say/fit.ts'
import { wordingOf } from '../../sim/say/wording.ts'
import { FREE, logOf, scenario } from './case.ts'

const time = Float64Array.from({ length: 2000 }, (_, k) => k / 1000)
const target = time.map((t) => 0.01 * (1 - Math.cos(2 * Math.PI * t)))
const logged = (position: (t: number, k: number) => number): Measured => ({
  time,
  channels: { target, motorTravel: time.map(position) },
})
const late = (t: number) => 0.01 * (1 - Math.cos(2 * Math.PI * (t - 0.004)))

describe('where an axis does not follow its reference', () => {
  it('is nowhere where it lags, is offset, or answers a step', () => {
    expect(astrayIn(logged((t) => 0.3 + late(t)))).toEqual([])
    const step = time.map((t) => (t < 0.5 ? 0 : 0.01))
    for (const slow of [0.03, 0.1, 0.3]) {
      const answer = time.map((t) => (t < 0.5 ? 0 : 0.01 * (1 - Math.exp(-(t - 0.5) / slow))))
      expect(astrayIn({ time, channels: { target: step, motorTravel: answer } }), `${slow} s`).toEqual([])
    }
  })

  it('is where it stands blocked, from where it began to stay behind to where it follows again', () => {
    const held = late(0.2)
    const [blocked, ...more] = astrayIn(logged((t) => (t > 0.2 && t < 0.8 ? held : late(t))))
    expect(more).toEqual([])
    expect(blocked!.kind).toBe('blocked')
    // Less the 50 ms before.
    expect(blocked!.from).toBeGreaterThan(0.14)
    expect(blocked!.from).toBeLessThan(0.18)
    // The reference comes back to where it stands at 0.8 s, and what swung has 0.1 s to end.
    expect(blocked!.to).toBeCloseTo(0.9, 1)
    expect(astrayText(blocked!, wordingOf('si'))).toContain('as if blocked: these rows do not count.')
  })

  it('is where it runs away', () => {
    const [away] = astrayIn(logged((t) => (t < 1.5 ? late(t) : late(1.5) + 0.3 * (t - 1.5))))
    expect(away!.kind).toBe('away')
    expect(away!.from).toBeCloseTo(1.45, 1)
    expect(away!.to).toBeGreaterThanOrEqual(time.at(-1)!)
  })

  it('never overlaps, and ends no earlier than it begins, whatever was measured', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 20, maxLength: 60 }), (values) => {
        const list = astrayIn(logged((_, k) => values[Math.floor((k * values.length) / 2000)]!))
        for (const [k, { from, to }] of list.entries()) {
          expect(to).toBeGreaterThan(from)
          if (k > 0) expect(from).toBeGreaterThan(list[k - 1]!.to)
        }
        const follows = followsAt({ time, channels: {} }, list)
        expect(list.every(({ from }) => !follows(time.findIndex((t) => t >= from)))).toBe(true)
      }),
    )
  })
})

describe('a fit to a log in which the axis was blocked', () => {
  it('gives what the log gives that ends before', { timeout: 0 }, async () => {
    const whole = logOf(1)
    const rows = 400
    const last = whole.time.at(-1)!
    const on = (column: Float64Array, more: (t: number) => number) =>
      Float64Array.of(...column, ...Array.from({ length: rows }, (_, k) => more((k + 1) / 1000)))
    const { target: wanted, motorTravel, current } = whole.channels
    const end = motorTravel.at(-1)!
    const blocked: Measured = {
      time: on(whole.time, (t) => last + t),
      channels: {
        target: on(wanted, (t) => wanted.at(-1)! + 0.04 * Math.min(1, t / 0.1)),
        motorTravel: on(motorTravel, () => end),
        current: on(current, (t) => Math.min(20, 200 * t)),
      },
    }
    const crew = crewHere(run, core)
    const wish = { free: Object.keys(FREE) }
    const plain = await identify(scenario, [whole], wish, crew)
    const found = await identify(scenario, [blocked], wish, crew)
    expect(found.alignment[0]!.astray.map(({ kind }) => kind)).toEqual(['blocked'])
    for (const [p, { path, value, low, high }] of plain.values.entries()) {
      expect(found.values[p]!.path).toBe(path)
      expect(Math.abs(found.values[p]!.value - value), path).toBeLessThan((high! - low!) / 2)
    }
  })
})
