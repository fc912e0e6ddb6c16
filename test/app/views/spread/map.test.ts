import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { contour, levelsOf, valueAt } from '../../../../app/views/spread/map/contours.ts'
import { mapCsv } from '../../../../app/views/spread/map/export.ts'
import { frameOf, nearest } from '../../../../app/views/spread/map/frame.ts'
import { hatchOf, wordOfClass } from '../../../../app/views/spread/map/look.ts'
import { axesOf, type MapAnswer, mapPaths, usualAxes, usualAxis } from '../../../../app/views/spread/map/state.ts'
import { crewHere } from '../../../../sim/ask/spread/tasks.ts'
import { run } from '../../../../sim/cli/core.ts'
import {
  fatesOf,
  JOBS,
  type JobId,
  METRICS,
  PRESETS,
  quantityAt,
  readPath,
  runMap,
  UNFIT,
} from '../../../../sim/index.ts'
import { quick } from '../../../grip/scenarios.ts'

describe('lines of equal value', () => {
  // Closed forms: a plane between the lines of a grid is the plane, and a circle has its radius.
  const field = (f: (x: number, y: number) => number) => ({
    columns: 33,
    rows: 33,
    values: Float64Array.from({ length: 33 * 33 }, (_, at) => f(at % 33, Math.floor(at / 33))),
  })

  it('lie where the value is', () => {
    const plane = field((x, y) => 2 * x - 3 * y)
    expect(valueAt(plane, 4.25, 31.5)).toBeCloseTo(8.5 - 94.5, 9)
    expect(valueAt(plane, 32, 32)).toBeCloseTo(-32, 9)
    for (const piece of contour(plane, 7)) for (const [x, y] of piece) expect(2 * x - 3 * y).toBeCloseTo(7, 9)
    const round = contour(
      field((x, y) => Math.hypot(x - 16, y - 16)),
      10,
    )
    const length = round.reduce((sum, [[a, b], [c, d]]) => sum + Math.hypot(a - c, b - d), 0)
    expect(length / (2 * Math.PI * 10)).toBeCloseTo(1, 2)
  })

  it('leave out what has no value', () => {
    const half = field((x, y) => (x < 16 ? Number.NaN : y))
    const places = contour(half, 5.5).flat()
    expect(places.length).toBeGreaterThan(0)
    expect(Math.min(...places.map(([x]) => x))).toBe(16)
    expect(valueAt(half, 3, 3)).toBeNaN()
  })

  it('have even levels between the ends', () => {
    expect(levelsOf(0, 1, 5).map((level) => Number(level.toFixed(9)))).toEqual([0.2, 0.4, 0.6, 0.8])
    expect(levelsOf(-7, 12, 4)).toEqual([-5, 0, 5, 10])
    expect(levelsOf(3, 3, 4)).toEqual([])
    expect(levelsOf(Number.NaN, Number.NaN, 4)).toEqual([])
  })
})

describe('the axes of a map', () => {
  it('are sensible for every preset, and lie in what is allowed', () => {
    for (const { scenario } of PRESETS) {
      const [x, y] = usualAxes(scenario)
      expect(x.path).not.toBe(y.path)
      for (const path of mapPaths(scenario)) {
        const { from, to } = usualAxis(scenario, path)
        const { minimum, maximum } = quantityAt(scenario, path)!
        expect(from, path).toBeLessThan(to)
        expect(from, path).toBeGreaterThanOrEqual(minimum)
        expect(to, path).toBeLessThanOrEqual(maximum)
        const value = readPath(scenario, path) as number
        if (value !== 0 && value !== minimum && value !== maximum) {
          expect(value, path).toBeGreaterThanOrEqual(from)
          expect(value, path).toBeLessThanOrEqual(to)
        }
      }
    }
  })

  it('are those that vary, as far as their laws reach', () => {
    const varies = [
      { path: 'part.mass', law: 'uniform', half: 0.1, share: false },
      { path: 'jaws.friction.static', law: 'lognormal', factor: 1.2 },
    ]
    const scenario = quick({ 'part.mass': 1, 'spread.varies': varies })
    const [x, y] = usualAxes(scenario)
    expect([x.path, y.path]).toEqual(['jaws.friction.static', 'part.mass'])
    expect([y.from, y.to]).toEqual([0.9, 1.1])
  })

  it('give way where the scenario has no such quantity, and never go over one twice', () => {
    const scenario = PRESETS[0]!.scenario
    const gone = { path: 'actuator.motor.nothing', from: 0, to: 1 }
    const [x, y] = axesOf(scenario, { x: gone, y: { path: 'part.stiffness', from: 1, to: 2 } })
    expect(y.path === x.path).toBe(false)
    expect(mapPaths(scenario)).toContain(x.path)
  })
})

describe('a map', async () => {
  const scenario = quick()
  const x = { path: 'part.mass', from: 0.1, to: 0.4 }
  const y = { path: 'approach.speed', from: 0.01, to: 0.02 }
  // Grips enough to lay the table out; what they say is tested with the map of grips.
  const { outcomeOf } = await import('../../../../sim/ask/spread/outcome.ts')
  const outcome = outcomeOf({ scenario, faults: [] }, 'current-clamp', run)
  const grid = { xs: [0.1, 0.4], ys: [0.01, 0.02], outcomes: [outcome, null, outcome, outcome] }
  const answer: MapAnswer = { scenario, x, y, strategy: 'current-clamp', points: 3, grid, map: null }

  it('is a table of its grips, in SI, by column and row', () => {
    const { data } = Papa.parse<string[]>(mapCsv(answer).trim())
    const metrics = METRICS.filter(({ id }) => id !== 'stepError')
    expect(data[0]!.slice(0, 3)).toEqual(['part.mass [kg]', 'approach.speed [m/s]', 'verdict'])
    expect(data.slice(1).map((row) => row.slice(0, 3))).toEqual([
      ['0.1', '0.01', outcome.fate],
      ['0.1', '0.02', outcome.fate],
      ['0.4', '0.02', outcome.fate],
    ])
    const peak = 3 + metrics.findIndex(({ id }) => id === 'peakForce')
    expect(data[0]![peak]).toBe('peakForce [N]')
    expect(Number(data[1]![peak])).toBe(run(scenario, 'current-clamp').result.metrics.peakForce)
  })

  it('has its cursor on the nearest grip', () => {
    const frame = frameOf(answer, 600)
    expect(nearest(grid, frame, frame.x(0.38), frame.y(0.011))).toEqual({ column: 1, row: 0 })
    expect(nearest(grid, frame, -50, -50)).toEqual({ column: 0, row: 1 })
  })

  it.each(Object.keys(JOBS) as JobId[])('tells every fate of a %s by a word and a hatching of its own', (job) => {
    const names = [...fatesOf(job), UNFIT]
    expect(new Set(names.map((name) => wordOfClass(job, name))).size).toBe(names.length)
    expect(new Set(names.map(hatchOf)).size).toBe(names.length)
    expect(names.every((name) => hatchOf(name) !== '' || name === JOBS[job].well)).toBe(true)
  })

  it('stops when nobody wants to go on', async () => {
    let heard = 0
    const asked = runMap(scenario, { strategy: 'current-clamp', x, y }, crewHere(run), () => ++heard < 2)
    await expect(asked).rejects.toThrow('stopped')
    expect(heard).toBe(2)
  })
})
