import { describe, expect, it } from 'vitest'
import { laneSizes } from '../../../../app/read/stage/laneSize.ts'
import { jumpsOf, momentsOf, nextOf } from '../../../../app/read/stage/moments.ts'
import { ticksOf } from '../../../../app/read/stage/ticks.ts'
import type { RunView } from '../../../../app/store/results.ts'
import { buildLens, flatLens } from '../../../../app/ui/timeLens.ts'
import { PRESETS, type StrategyId, simulateGrip } from '../../../../sim/index.ts'

function runOf(strategy: StrategyId): RunView {
  const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!
  const { result, traces } = simulateGrip(scenario, strategy)
  return { strategy, scenario, status: 'done', result, traces, rows: traces.time.length, revision: 1 }
}

describe('moments', () => {
  const run = runOf('threshold-stop')

  it('come in the order in which they happened, without what did not happen', () => {
    const moments = momentsOf(run)
    expect(moments[0]).toEqual({ kind: 'contact', time: run.result!.metrics.contactTime })
    expect(moments.map(({ time }) => time)).toEqual(moments.map(({ time }) => time).sort((a, b) => a - b))
    expect(moments.some(({ kind }) => kind === 'unstable')).toBe(false)
    expect(momentsOf({ result: null })).toEqual([])
  })

  it('are jumped to one after the other and around', () => {
    expect(nextOf([1, 2, 3], 1)).toBe(2)
    expect(nextOf([1, 2, 3], 3)).toBe(1)
    expect(nextOf([], 3)).toBeUndefined()
    const arm = jumpsOf([run, run]).find(({ id }) => id === 'arm')
    expect(arm?.times).toEqual(run.scenario.arm.moves.map(({ start }) => start))
  })
})

describe('ticks', () => {
  it('are denser in time where the lens stretches, and labels keep apart', () => {
    const lens = buildLens({ duration: 1.5, contacts: [0.23], moves: [] })
    const ticks = ticksOf(lens, 1.5, 650)
    const per = (from: number, to: number) => ticks.filter(({ time }) => time > from && time < to).length / (to - from)
    expect(per(0.23, 0.28)).toBeGreaterThan(5 * per(0.6, 1.4))
    const labels = ticks.filter(({ label }) => label !== null).map(({ x }) => x)
    for (let i = 1; i < labels.length; i++) expect(labels[i]! - labels[i - 1]!).toBeGreaterThanOrEqual(40)
  })

  it('have labels at even steps where nothing is stretched', () => {
    for (const [duration, width] of [
      [2.4, 650],
      [1.5, 310],
      [600, 700],
      [0.4, 900],
    ] as const) {
      const labels = ticksOf(flatLens(duration), duration, width).filter(({ label }) => label !== null)
      const gaps = labels.slice(1).map(({ time }, at) => time - labels[at]!.time)
      expect(gaps.length).toBeGreaterThan(1)
      for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 9)
    }
  })

  it('stay few for a long run', () => {
    expect(ticksOf(flatLens(600), 600, 700).length).toBeLessThan(200)
  })
})

describe('lanes', () => {
  it('stand side by side where there is room, else one under the other', () => {
    expect(laneSizes(830, 3).columns).toBe(3)
    expect(laneSizes(740, 2).columns).toBe(2)
    expect(laneSizes(374, 3).columns).toBe(1)
    expect(laneSizes(374, 3).each.width).toBe(374)
    expect(laneSizes(830, 1).each).toEqual(laneSizes(830, 1).alone)
  })
})
