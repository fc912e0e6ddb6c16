import { describe, expect, it } from 'vitest'
import { runBand } from '../../../sim/ask/spread/band.ts'
import { BEYOND } from '../../../sim/ask/spread/beyond.ts'
import { drawing } from '../../../sim/ask/spread/draw.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { quick } from '../../grip/scenarios.ts'

const study = {
  scenario: quick({
    'spread.varies': [
      { path: 'part.stiffness', law: 'lognormal', factor: 1.3 },
      { path: 'part.width', law: 'normal', sd: 3e-4 },
    ],
  }),
  strategies: ['current-clamp' as const],
  grips: 40,
  seed: 3,
  sampling: 'sobol' as const,
  channels: ['force' as const, 'travel' as const],
}

describe('the band of the traces', async () => {
  const band = (await runBand(study, 'current-clamp', crewHere(run)))!
  const draw = drawing(study.scenario, study)
  const traces = Array.from(
    { length: study.grips },
    (_, index) => run(draw(index).scenario, 'current-clamp', { traces: true }).traces,
  )
  const within = (time: number) => Math.floor((time / study.scenario.run.duration) * band.time.length)
  const half = (band.time[1]! - band.time[0]!) / 2

  // Closed form: of n values n·share − share lie below a quantile by straight lines, rounded up.
  it.each(study.channels)('has a share of the parts below and as many above, of %s in every interval', (channel) => {
    const few = Math.ceil(BEYOND * (study.grips - 1))
    for (const interval of band.time.keys()) {
      if (interval % 23 !== 0) continue
      const inside = traces.map(({ time, [channel]: values }) =>
        values.filter((_, at) => within(time[at]!) === interval).map(Math.fround),
      )
      const low = band.low[channel]![interval]!
      const high = band.high[channel]![interval]!
      const beyond = (out: (values: Float64Array) => boolean) => inside.filter(out).length
      expect(beyond((values) => Math.min(...values) < low)).toBeLessThanOrEqual(few)
      expect(beyond((values) => Math.max(...values) > high)).toBeLessThanOrEqual(few)
      const distinct = (of: (...values: number[]) => number) => new Set(inside.map((values) => of(...values))).size
      if (distinct(Math.min) === study.grips) expect(beyond((values) => Math.min(...values) < low)).toBe(few)
      if (distinct(Math.max) === study.grips) expect(beyond((values) => Math.max(...values) > high)).toBe(few)
    }
  })

  it('misses no peak between two instants', () => {
    const peaks = traces.map(({ force }) => Math.max(...force)).sort((a, b) => a - b)
    expect(Math.max(...band.high.force!)).toBeGreaterThan(peaks[study.grips / 2]!)
    expect(band.time.at(-1)! + half).toBeCloseTo(study.scenario.run.duration, 9)
  })

  it('is none when nobody waits for it any more', async () => {
    expect(await runBand(study, 'current-clamp', crewHere(run), () => false)).toBeNull()
  })
})
