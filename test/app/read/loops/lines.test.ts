import { describe, expect, it } from 'vitest'
import { COLUMNS, whyAbsent } from '../../../../app/read/loops/figures.ts'
import {
  analysesOf,
  curveSeries,
  frequencyRange,
  magnitudePoints,
  phasePoints,
  summary,
  worstOf,
} from '../../../../app/read/loops/lines.ts'
import { keyed } from '../../../../app/ui/chart/Frame.tsx'
import { DECADES, decadeSplits } from '../../../../app/ui/chart/logLook.ts'
import { analyseLoops, editScenario, type LoopAnalysis, PRESETS, type Scenario } from '../../../../sim/index.ts'

const scenario = PRESETS[0]!.scenario
const result = analyseLoops(scenario, { curves: true })
const position = analysesOf(result, 'position')

function edited(from: Scenario, path: string, value: number): Scenario {
  const answer = editScenario(from, [{ path, value }])
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults))
  return answer.scenario
}

/** The curve's height at a frequency, by a straight line between its points. */
function heightAt(x: Float64Array, y: Float64Array, at: number) {
  const i = x.findIndex((value) => value >= at)
  return y[i - 1]! + ((y[i]! - y[i - 1]!) * (at - x[i - 1]!)) / (x[i]! - x[i - 1]!)
}

describe('working points in one chart', () => {
  it('marks the loop that comes closest to −1 as the worst', () => {
    const worst = worstOf(position)!
    for (const each of position)
      expect(worst.margins!.peakSensitivity).toBeGreaterThanOrEqual(each.margins!.peakSensitivity)
    const labels = curveSeries(position, worst, 'phase').map(({ label }) => label)
    expect(labels.filter((label) => label.endsWith('worst'))).toHaveLength(1)
    expect(new Set(curveSeries(position, worst, 'phase').map(({ dash }) => String(dash))).size).toBe(4)
  })

  it('puts crossover, gain margin and phase margin on their curves', () => {
    for (const loop of ['current', 'position', 'velocity', 'force'] as const)
      for (const each of analysesOf(result, loop)) {
        const { frequency, magnitude, phase } = each.curves!
        for (const { x, y } of magnitudePoints([each], null))
          expect(Math.abs(heightAt(frequency, magnitude, x) - y)).toBeLessThan(0.02) // [dB], between two points of the curve
        for (const { x, y } of phasePoints([each], null))
          expect(Math.abs(heightAt(frequency, phase, x) - y)).toBeLessThan(3)
      }
  })

  it('covers every curve with its range', () => {
    const [from, to] = frequencyRange(position)
    for (const { curves } of position) {
      expect(curves!.frequency[0]).toBeGreaterThanOrEqual(from)
      expect(curves!.frequency.at(-1)).toBeLessThanOrEqual(to)
    }
  })

  it('calls an unstable loop so, as the worst, and prints no margin of it', () => {
    const wild = analyseLoops(edited(scenario, 'servo.kd', scenario.servo.kd * 12), { curves: true })
    const loops = analysesOf(wild, 'position')
    const worst = worstOf(loops)!
    expect(worst.stable).toBe(false)
    expect(summary(wild, [worst], worst)).toMatch(/worst case: unstable\.$/)
    expect(phasePoints([worst], worst)).toEqual([])
    for (const column of COLUMNS.filter(({ id }) => id !== 'crossover')) {
      expect(column.value(worst)).toBeNull()
      expect(whyAbsent(column, worst)).toContain('unstable')
    }
  })

  it('says why a figure does not exist', () => {
    const free = analysesOf(result, 'force').find(({ workingPoint }) => workingPoint === 'free') as LoopAnalysis
    expect(whyAbsent(COLUMNS[0]!, free)).toContain('no crossover')
    expect(summary(result, [free], null)).toBe('Free air: no crossover.')
  })
})

describe('logarithmic axis', () => {
  it('has lines at 1 to 9 of each decade within its range', () => {
    expect(decadeSplits([3, 40])).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 20, 30, 40])
    expect(decadeSplits([0.05, 0.2])).toHaveLength(7)
  })

  it('moves its cursor by even shares of a decade and stays inside', () => {
    const range: [number, number] = [1, 100]
    const shown = { lens: DECADES, xRange: range }
    const press = (key: string, now: number, shiftKey = false) => keyed({ key, shiftKey }, now, range, shown, 1 / 200)
    expect(press('ArrowRight', 10)! / 10).toBeCloseTo(press('ArrowRight', 50)! / 50, 12)
    expect(press('ArrowRight', 1, true)).toBeCloseTo(press('PageUp', 1)!, 12)
    expect(press('ArrowLeft', 1)).toBe(1)
    expect(press('End', 5)).toBe(100)
    expect(press('x', 5)).toBeNull()
  })
})
