import { describe, expect, it } from 'vitest'
import { bestOf, type TuneCandidate, tradeOff, tuneGains } from '../../sim/ask/tune.ts'
import { editScenario, missWhy, missWords, PRESETS, readPath, simulateGrip } from '../../sim/index.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'

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
    expect(progress.at(-1)!.done).toBeLessThanOrEqual(progress.at(-1)!.of)
    expect(progress.at(-1)!.done).toBeGreaterThan(21)
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
    for (const { miss } of refused)
      expect(missWhy(miss!)).toContain(miss!.kind === 'part' ? miss!.verdict : missWords(miss!))
  })

  it('judges the gains on the bench alike, by an independent run and analysis', () => {
    const { present } = progress[0]!
    for (const { path, value } of present.edits) expect(readPath(scenario, path)).toBe(value)
    const run = simulateGrip(
      { ...scenario, part: { ...scenario.part, stiffness: 0.7 * scenario.part.stiffness } },
      'sensed-force',
    )
    expect(present.gripTime!).toBeGreaterThanOrEqual(run.result.metrics.gripTime!)
    const { loops } = analyseLoops(scenario, { loops: ['velocity', 'force'], spread: 0.3 })
    expect(present.phaseMargin).toBe(Math.min(...loops.map(({ margins }) => margins!.phaseMargin ?? 180)))
    expect(present.sound).toBe(true)
  })

  it('gives the figures of gains on the bench that miss a margin', () => {
    const [first] = tuneGains(scenario, { ...options, phaseMargin: 80 })
    expect(first!.present).toMatchObject({ sound: false, miss: { kind: 'phase margin' } })
    expect(first!.present.gripTime).toBe(progress[0]!.present.gripTime)
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
