import { describe, expect, it } from 'vitest'
import {
  analyseLoops,
  designGains,
  LOOPS,
  limitsOf,
  limitWords,
  PRESETS,
  tryDesign,
  wordingOf,
} from '../../sim/index.ts'
import { axisFigures } from '../../sim/loops/design/axis-figures.ts'
import { scenarioOf } from '../checks/support.ts'

const BASE = scenarioOf()

describe('designGains', () => {
  it('hands out formula, source and gains that the scenario takes, for every loop of every preset', () => {
    for (const { scenario } of PRESETS) {
      for (const loop of LOOPS) {
        const designs = designGains(scenario, loop)
        expect(designs.length).toBeGreaterThan(0)
        for (const design of designs) {
          for (const text of [design.label, design.formula, design.source]) expect(text).not.toBe('')
          const tried = tryDesign(scenario, design)
          expect(tried.ok, JSON.stringify(tried)).toBe(true)
          if (!tried.ok || design.edits.length === 0) continue
          const [free] = tried.result.loops
          expect(free!.stable, `${scenario.name} ${loop} ${design.method}`).toBe(true)
        }
      }
    }
  })

  it('has three methods for position and velocity and two for the current', () => {
    const methods = (loop: 'current' | 'position' | 'velocity') => designGains(BASE, loop).map(({ method }) => method)
    expect(methods('current')).toEqual(['pole-zero-cancellation', 'magnitude-optimum'])
    for (const loop of ['position', 'velocity'] as const)
      expect(methods(loop)).toEqual(['bandwidth-damping', 'symmetric-optimum', 'simc'])
  })

  it('puts the dominant poles of a slow position loop where they were wanted', () => {
    const omega = 0.02 / axisFigures(BASE).delay
    const [design] = designGains(BASE, 'position', { bandwidth: omega, damping: 0.7 })
    const tried = tryDesign(BASE, design!, { workingPoints: ['free'] })
    if (!tried.ok) throw new Error('refused')
    const { poles, period } = tried.result.loops[0]!
    const slow = poles
      .slice(0, 3)
      .map(({ re, im }) => Math.hypot(Math.log(Math.hypot(re, im)), Math.atan2(im, re)) / period)
    for (const rate of slow) expect(Math.abs(rate / omega - 1)).toBeLessThan(0.1)
  })

  it('gives a velocity loop the phase margin that its default promises', () => {
    const [design] = designGains(BASE, 'velocity')
    const tried = tryDesign(BASE, design!, { workingPoints: ['free'] })
    if (!tried.ok) throw new Error('refused')
    expect(tried.result.loops[0]!.margins!.phaseMargin).toBeGreaterThan(45)
    expect(tried.result.loops[0]!.margins!.phaseMargin).toBeLessThan(65)
  })

  it.each([
    [1.3, false],
    [1.6, true],
    [2, true],
  ])('force loop: the worst peak sensitivity over the stiffness range is %d', (peakSensitivity, integral) => {
    const [design] = designGains(BASE, 'force', { peakSensitivity, integral }, { spread: 0.5 })
    const tried = tryDesign(BASE, design!, { spread: 0.5, workingPoints: ['softest', 'nominal', 'stiffest'] })
    if (!tried.ok) throw new Error('refused')
    const worst = Math.max(...tried.result.loops.map(({ margins }) => margins!.peakSensitivity))
    expect(worst).toBeLessThanOrEqual(peakSensitivity * 1.001)
    expect(worst).toBeGreaterThan(peakSensitivity * 0.98)
  })

  it('gives no force gain where the velocity loop inside is unstable, and says so', () => {
    const wild = scenarioOf({ strategies: { sensedForce: { velocity: { kp: 8000 } } } })
    const [design] = designGains(wild, 'force')
    expect(design!.edits).toEqual([])
    expect(design!.note).toMatch(/velocity loop/)
  })

  it.each([
    ['bandwidth', 0],
    ['bandwidth', Number.NaN],
    ['damping', -1],
  ])('refuses a %s of %d', (name, value) => {
    expect(() => designGains(BASE, 'position', { [name]: value })).toThrow(new RegExp(`^${name}: given ${value}`))
  })

  it('refuses a peak sensitivity that no loop has', () => {
    expect(() => designGains(BASE, 'force', { peakSensitivity: 1 })).toThrow(/peak sensitivity: given 1/)
  })
})

describe('limitsOf', () => {
  it('names the tightest first, each with figures and a remedy', () => {
    for (const { scenario } of PRESETS) {
      for (const loop of LOOPS) {
        const limits = limitsOf(scenario, loop)
        for (let i = 1; i < limits.length; i++)
          expect(limits[i]!.crossover).toBeGreaterThanOrEqual(limits[i - 1]!.crossover)
        for (const limit of limits) {
          const { crossover } = limit
          const { because, remedy } = limitWords(limit, wordingOf('si'))
          expect(crossover).toBeGreaterThanOrEqual(0)
          expect(because).toMatch(/\d/)
          expect(because + remedy).not.toMatch(/NaN|undefined|Infinity/)
        }
      }
    }
  })

  it('keeps its promises: twice the current rate doubles what the delay allows, a quarter of the voltage less than halves', () => {
    const bound = (scenario: typeof BASE, kind: string) =>
      limitsOf(scenario, 'current').find((limit) => limit.kind === kind)!.crossover
    const faster = scenarioOf({ drive: { currentRate: 40000 } })
    expect(bound(faster, 'delay') / bound(BASE, 'delay')).toBeCloseTo(2, 9)
    const weaker = scenarioOf({ drive: { busVoltage: 24 } })
    expect(bound(weaker, 'voltage')).toBeLessThan(bound(BASE, 'voltage') / 2)
  })

  it('the delay bound of the current loop leaves 60° in the sampled loop as well', () => {
    const { crossover } = limitsOf(BASE, 'current').find(({ kind }) => kind === 'delay')!
    const at = scenarioOf({ drive: { currentBandwidth: crossover, backEmfFeedforward: 0 } })
    const [loop] = analyseLoops(at, { loops: ['current'], workingPoints: ['free'] }).loops
    expect(loop!.margins!.phaseMargin).toBeGreaterThan(58)
    expect(loop!.margins!.phaseMargin).toBeLessThan(63)
  })
})
