import { describe, expect, it } from 'vitest'
import { quantityUnit } from '../../../../app/read/units.ts'
import type { RunView } from '../../../../app/store/results.ts'
import { BOX, outline, placeIn, ticksOf, timeGround } from '../../../../app/views/report/trace.ts'
import { editScenario, PRESETS, type Scenario } from '../../../../sim/index.ts'

const teapot = PRESETS[0]!.scenario

/** Of the traces over time. */
const topOf = (scenario: Scenario, runs: RunView[]) => timeGround(scenario, runs, 'si').top

describe('force trace', () => {
  const place = placeIn({ farthest: 1.5, top: 80 })

  it('keeps the peak of every bucket and stays inside its frame', () => {
    const rows = 30_000
    const time = Float64Array.from({ length: rows }, (_, row) => (1.5 * row) / rows)
    const values = time.map((_, row) => (row === 12_345 ? 77 : row % 2))
    const path = outline(place, time, values, rows)
    const points = path
      .slice(1)
      .split('L')
      .map((point) => point.split(' ').map(Number) as [number, number])
    expect(points.length).toBeLessThan(1200)
    expect(Math.abs(Math.min(...points.map(([, y]) => y)) - place.y(77))).toBeLessThanOrEqual(0.05) // written in tenths
    for (const [x, y] of points) {
      expect(x >= BOX.left && x <= BOX.width - BOX.right).toBe(true)
      expect(y >= BOX.top && y <= BOX.height - BOX.bottom).toBe(true)
    }
    expect(outline(place, time, values, 0)).toBe('')
  })

  it('has one scale for all strategies, with the window in it where that is near', () => {
    expect(topOf(teapot, [])).toBeCloseTo((1.2 * 0.9 * (9.80665 + 6)) / (2 * 0.45), 9) // m (g + a)/2µ, closed form
    const run = { scenario: teapot, result: { metrics: { peakForce: 40 } } } as never
    expect(topOf(teapot, [run])).toBeCloseTo(1.2 * 65, 6)
    const tough = editScenario(teapot, [{ path: 'part.crackForce', value: 4000 }])
    expect(tough.ok && topOf(tough.scenario, [run])).toBeCloseTo(1.2 * 40, 6)
    const idle = editScenario(teapot, [
      { path: 'part.crackForce', value: undefined },
      { path: 'arm', value: { gravity: 'none' } },
    ])
    expect(idle.ok && topOf(idle.scenario, [])).toBeGreaterThan(0)
  })

  it('ticks round forces in the unit of the page', () => {
    const si = quantityUnit('force', 'si')
    const us = quantityUnit('force', 'us')
    expect(ticksOf(78, si)).toEqual([0, 20, 40, 60])
    expect(ticksOf(5.4, us).map((force) => Number(us.toShown(force).toFixed(9)))).toEqual([0, 0.5, 1])
    expect(ticksOf(0.0123, si)).toEqual([0, 0.005, 0.01])
  })
})
