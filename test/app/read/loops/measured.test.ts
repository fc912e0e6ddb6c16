import { describe, expect, it } from 'vitest'
import { measuredLoop } from '../../../../app/read/loops/measured.ts'
import { analyseLoops, axisResponse, curveOf, decades, PRESETS } from '../../../../sim/index.ts'

const { scenario } = PRESETS[0]!
const { loops } = analyseLoops(scenario, { curves: true })
const of = (loop: string) => loops.filter((each) => each.loop === loop)

const measuredAs = (gain: number, delay = 0) => {
  const frequency = decades(50, 2000, 30)
  const at = axisResponse(scenario, 'speed', delay)
  const measured = curveOf(frequency, (k) => {
    const { re, im } = at(frequency[k]!)
    return { re: gain * re, im: gain * im }
  })
  return {
    measured,
    coherence: null,
    blocks: 0,
    input: 'command' as const,
    counts: new Uint8Array(30).fill(1),
    before: measured,
    after: null,
    fit: null,
    why: null,
    about: { scenario, log: 1, recording: null, shown: 'speed' as const, said: {} },
  }
}

describe('a loop with the measured axis', () => {
  it('is the loop itself where the axis is the modelled one, and twice it where that answers twice', () => {
    const position = of('position')
    const same = measuredLoop(position, scenario, measuredAs(1))!
    const twice = measuredLoop(position, scenario, measuredAs(-2))!
    const free = position.find(({ workingPoint }) => workingPoint === 'free')!.curves!
    const k = free.frequency.findIndex((omega) => omega > same.magnitude.time![10]!)
    const low = Math.min(free.magnitude[k]!, free.magnitude[k - 1]!)
    const high = Math.max(free.magnitude[k]!, free.magnitude[k - 1]!)
    expect(same.magnitude.values![10]!).toBeGreaterThanOrEqual(low)
    expect(same.magnitude.values![10]!).toBeLessThanOrEqual(high)
    // 20·log₁₀ 2, and half a turn.
    expect(twice.magnitude.values![10]! - same.magnitude.values![10]!).toBeCloseTo(6.0206, 3)
    expect(Math.abs(twice.phase.values![10]! - same.phase.values![10]!)).toBeCloseTo(180, 6)
  })

  it('lags by what the measured axis lags: ω·T', () => {
    const [same, late] = [0, 0.0005].map((delay) => measuredLoop(of('position'), scenario, measuredAs(1, delay))!)
    const omega = same!.phase.time![20]!
    expect(same!.phase.values![20]! - late!.phase.values![20]!).toBeCloseTo((180 / Math.PI) * omega * 0.0005, 6)
  })

  it('is none of loops that do not go through the axis alone, and has no frequency that does not count', () => {
    expect(measuredLoop(of('current'), scenario, measuredAs(1))).toBeNull()
    expect(measuredLoop(of('force'), scenario, measuredAs(1))).toBeNull()
    const none = { ...measuredAs(1), counts: new Uint8Array(30) }
    expect(measuredLoop(of('position'), scenario, none)).toBeNull()
  })
})
