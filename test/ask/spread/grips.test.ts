import { describe, expect, it } from 'vitest'
import { normalShare } from '../../../sim/ask/spread/distributions.ts'
import { drawing } from '../../../sim/ask/spread/draw.ts'
import { type DriverRows, driversAnswer, runDrivers, subjectsOf } from '../../../sim/ask/spread/run-drivers.ts'
import { runMap } from '../../../sim/ask/spread/run-map.ts'
import { runRare } from '../../../sim/ask/spread/run-rare.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { editScenario, forceWindow } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const crew = crewHere(run)
const varying = (varies: object[], edits: Record<string, unknown> = {}) => quick({ ...edits, 'spread.varies': varies })

describe('what drives the failures of grips', () => {
  const scenario = varying([
    { path: 'jaws.friction.static', law: 'lognormal', factor: 2.5 },
    { path: 'actuator.motor.thermal.ambient', law: 'uniform', half: 1 },
  ])
  const study = { scenario, strategies: [], grips: 40, seed: 3, sampling: 'sobol' as const }

  it('is the friction of the pads, not the weather; the first part of a sample is that of the study', async () => {
    const indices = Array.from({ length: 60 }, (_, index) => index)
    const rows = await runDrivers(study, 'current-clamp', crew, indices)
    const { drivers } = driversAnswer(study, rows)!
    expect(drivers.map(({ path }) => path)).toEqual(['jaws.friction.static', 'actuator.motor.thermal.ambient'])
    expect(drivers[0]!.total.value).toBeGreaterThan(0.9)
    expect(drivers[1]!.total.value).toBeLessThan(0.05)
    const part = drawing(scenario, study)(7)
    const { metrics } = run(part.scenario, 'current-clamp').result
    expect(rows.get(7)![0]!.spare).toBe(Math.min(metrics.holdMargin!, metrics.damageMargin ?? Number.POSITIVE_INFINITY))
  })

  it('is nothing where nothing varies', async () => {
    const same = { ...study, scenario: varying([{ path: 'part.mass', law: 'normal', sd: 0 }]) }
    const rows = await runDrivers(same, 'current-clamp', crew, [0, 1, 20, 21, 40, 41, 60, 61])
    expect(driversAnswer(same, rows)).toBeNull()
  })
})

describe('rare failures of grips', () => {
  // Stress and strength, closed form: the part cracks where the peak force, always the same here, goes beyond its strength. With a
  // strength normal about m, the share is Φ((peak − m)/sd).
  it('have the share of the closed form, and a part that does fail', async () => {
    const base = quick({ 'part.crackForce': 1e5 })
    const peak = run(base, 'current-clamp').result.metrics.peakForce!
    const sd = 0.1 * peak
    const scenario = varying([{ path: 'part.crackForce', law: 'normal', sd }], { 'part.crackForce': peak + 3.5 * sd })
    const found = await runRare(scenario, { strategy: 'current-clamp', seed: 5, size: 200 }, crew)
    if (found.rare.kind !== 'share') throw new Error(found.rare.kind)
    const truth = normalShare(-3.5) // 2.326e-4
    expect(Math.abs(Math.log(found.rare.share / truth))).toBeLessThan(3 * found.rare.variation + 0.05)
    const plain = 1 / (truth * found.rare.variation ** 2) // closed form: grips to the same coefficient of variation
    expect(found.grips * 50).toBeLessThan(plain)
    const edited = editScenario(scenario, found.likeliest!)
    if (!edited.ok) throw new Error('refused')
    expect(run(edited.scenario, 'current-clamp').result.verdict).toBe('crushed')
  }, 60_000)
})

describe('a map of grips', () => {
  it('has its border where the force window says that the part is lost', async () => {
    const scenario = quick({ 'jaws.friction.static': 0.3, 'jaws.friction.sliding': 0.3 })
    const x = { path: 'part.mass', from: 0.05, to: 20 }
    const y = { path: 'actuator.motor.thermal.ambient', from: 10, to: 40 }
    const { borders, cells } = await runMap(scenario, { strategy: 'current-clamp', x, y }, crew)
    const lost = borders.filter(({ classes }) => classes.includes('held')).flatMap(({ points }) => points)
    expect(lost.length).toBeGreaterThan(0)
    for (const [mass] of lost) {
      const edited = editScenario(scenario, [{ path: 'part.mass', value: mass }])
      if (!edited.ok) throw new Error('refused')
      const force = run(edited.scenario, 'current-clamp').result.metrics.settledForce!
      // Where the settled force is just what holds; it is the peak of the need that counts, so to a few per cent.
      expect(forceWindow(edited.scenario).least! / force).toBeGreaterThan(0.9)
      expect(forceWindow(edited.scenario).least! / force).toBeLessThan(1.1)
    }
    expect(new Set(cells.flatMap(({ corners }) => corners)).has('held')).toBe(true)
  }, 120_000)
})

describe('what drivers may be asked for', () => {
  const part = (fate: 'held' | 'dropped', ...failed: ('gripTime' | 'holdMargin')[]) => ({ fate, failed, spare: 0 })

  it('is what some grips are of and some are not', () => {
    const rows: DriverRows = new Map([
      [0, [part('held'), part('dropped', 'holdMargin')]],
      [1, [part('held', 'gripTime'), part('held')]],
    ])
    expect(subjectsOf('grip', rows)).toEqual(expect.arrayContaining(['held', 'dropped', 'gripTime', 'holdMargin']))
    expect(subjectsOf('grip', rows)).toHaveLength(4)
    expect(subjectsOf('grip', new Map([[0, [part('held', 'gripTime')]]]))).toEqual([])
    expect(subjectsOf('grip', new Map())).toEqual([])
  })
})
