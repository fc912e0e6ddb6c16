import { describe, expect, it } from 'vitest'
import { editScenario, PRESETS, simulateGrip } from '../../sim/index.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'
import { bestOf, type TuneCandidate, tradeOff, tuneGains } from '../../sim/study/tune.ts'

const { scenario } = PRESETS[0]!
const options = {
  strategy: 'sensed-force',
  objective: 'gripTime',
  phaseMargin: 45,
  peakSensitivity: 2,
  spread: 0.3,
} as const
const progress = [...tuneGains(scenario, options)]
const candidates = progress.map(({ candidate }) => candidate)

describe('robust tune of the force loop on the opening preset', () => {
  it('counts its progress', () => {
    expect(progress.map(({ done }) => done)).toEqual(progress.map((_, n) => n + 1))
    expect(progress.at(-1)!.done).toBe(progress.at(-1)!.of)
  })

  it('finds gains that grip in less than a third of the time, by an independent run and analysis', () => {
    const best = bestOf(candidates, 'gripTime')!
    const tuned = editScenario(scenario, best.edits)
    if (!tuned.ok) throw new Error('refused')
    const before = simulateGrip(scenario, 'sensed-force').result.metrics.gripTime!
    for (const factor of [0.7, 1, 1.3]) {
      const part = { ...tuned.scenario.part, stiffness: scenario.part.stiffness * factor }
      const { verdict, metrics } = simulateGrip({ ...tuned.scenario, part }, 'sensed-force').result
      expect(verdict).toBe('held')
      expect(metrics.gripTime!).toBeLessThanOrEqual(best.gripTime! + 1e-12)
      expect(metrics.gripTime!).toBeLessThan(before / 3)
    }
    for (const { stable, margins } of analyseLoops(tuned.scenario, { loops: ['velocity', 'force'], spread: 0.3 })
      .loops) {
      expect(stable).toBe(true)
      expect(margins!.phaseMargin ?? 180).toBeGreaterThanOrEqual(45)
      expect(margins!.peakSensitivity).toBeLessThanOrEqual(2)
    }
  })

  it('says why it refuses the others', () => {
    const refused = candidates.filter(({ sound }) => !sound)
    expect(refused.length).toBeGreaterThan(0)
    for (const { why } of refused) expect(why).not.toBe('')
  })
})

describe('trade-off', () => {
  const candidate = (gripTime: number, peakForce: number, sound = true) =>
    ({ gripTime, peakForce, sound }) as TuneCandidate

  it('keeps what no other beats in both', () => {
    const kept = tradeOff([
      candidate(3, 1),
      candidate(1, 3),
      candidate(2, 2),
      candidate(2.5, 2.5),
      candidate(0.5, 0.5, false),
    ])
    expect(kept.map(({ gripTime }) => gripTime)).toEqual([1, 2, 3])
  })
})
