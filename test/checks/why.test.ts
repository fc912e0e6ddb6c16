import { describe, expect, it } from 'vitest'
import { run } from '../../sim/cli/core.ts'
import { axisOf, contactsOf, explain, PRESETS, STRATEGIES, type StrategyId, strategyOf } from '../../sim/index.ts'
import { explained } from '../grip/remembered.ts'
import { make } from '../scenario/make.ts'

const sum = (parts: { force: number }[]) => parts.reduce((total, { force }) => total + force, 0)
const every = PRESETS.flatMap(({ id, scenario }) => STRATEGIES.map((strategy) => [id, strategy.id, scenario] as const))

describe('why, on every preset and strategy', () => {
  it.each(every)('%s, %s: the causes add up to the figure within 1 %', (_, strategy, scenario) => {
    const { verdict, metrics } = run(scenario, strategy).result
    const why = explained(scenario, strategy)
    const solid = make(scenario, { 'part.crackForce': undefined, 'part.yieldForce': undefined })
    expect(why.force).toBe(run(solid, strategy).result.metrics.peakForce)
    if (verdict === 'held') expect(why.force).toBe(metrics.peakForce)
    expect(Math.abs(sum(why.causes) / why.force! - 1)).toBeLessThan(0.01)
    expect(sum(why.causes.map(({ share }) => ({ force: share! })))).toBeCloseTo(1, 9)
    expect(why.causes[0]).toMatchObject({ cause: 'setting', force: strategyOf(strategy).forceOf(scenario).expected })
    // A cause whose orders cancel is listed for its range: alone or as the last to go it changes the figure.
    for (const { cause, share, alone, last } of why.causes)
      if (Math.abs(share!) < 0.001 && cause !== 'rest')
        expect(Math.max(Math.abs(alone ?? 0), Math.abs(last ?? 0)), cause).toBeGreaterThan(0.001 * why.force!)
    // Every cause is named: what no counter-run takes away is hardly anything.
    expect(why.untold).toEqual([])
    expect(Math.abs(why.causes.at(-1)!.share!)).toBeLessThan(0.01)
  })
})

describe('a cause has the size that its closed form gives', () => {
  const teapot = PRESETS[0]!.scenario
  const told = (scenario: typeof teapot, strategy: StrategyId) => {
    const why = explain(scenario, strategy, run(scenario, strategy).result.verdict, run)
    return (cause: string) => why.causes.find((each) => each.cause === cause)?.force ?? 0
  }

  it('an offset of the current: K·I/contacts less the thread’s friction', () => {
    const offset = -0.1
    const scenario = make(teapot, { 'drive.currentOffset': offset })
    const why = explain(scenario, 'current-clamp', run(scenario, 'current-clamp').result.verdict, run)
    // The last to go: in a slow grip, which the closed form is of. A fast one has friction help it at the peak.
    const off = why.causes.find(({ cause }) => cause === 'measuring')!.last!
    const axis = axisOf(teapot.actuator)
    const newtons = (-offset * axis.forcePerAmpere) / contactsOf(teapot)
    expect(Math.abs(off / newtons - 1)).toBeLessThan(0.02) // the thread's friction: it holds what it has been pressed to
  })

  it('offset and gain error of the gauge: (F* − F0)/(1 + ε) − F*', () => {
    const sensor = 'sensors.gauge'
    const { target } = teapot.strategies.sensedForce
    const off = told(make(teapot, { [`${sensor}.offset`]: 1, [`${sensor}.gainError`]: 0.2 }), 'sensed-force')
    // In the mean over all orders, in some of which the axis' friction is gone before.
    expect(Math.abs(off('measuring') / ((target - 1) / 1.2 - target) - 1)).toBeLessThan(0.06)
    expect(off('setting')).toBe(target)
  })

  it('loss of power takes all of a back-drivable grip', () => {
    const lost = make(teapot, { 'events.powerLoss': { time: 0.9, windings: 'open' } })
    const { metrics, verdict } = run(lost, 'current-clamp').result
    expect(verdict).toBe('dropped')
    const why = explain(lost, 'current-clamp', verdict, run)
    expect(why).toMatchObject({ figure: 'hold', force: 0, bound: metrics.requiredForce })
    expect(why.causes.every(({ share }) => share === null)).toBe(true)
    expect(sum(why.causes)).toBeCloseTo(0, 9)
    // Alone it gives the whole grip back; in the mean over all orders other losses take their part of it.
    const loss = why.causes.find(({ alone }) => alone !== null && -alone > 0.5 * metrics.settledForce!)!
    expect(Math.abs(-loss.alone! / metrics.settledForce! - 1)).toBeLessThan(0.002) // noise of the current
    expect(-loss.force / metrics.settledForce!).toBeGreaterThan(0.9)
  })

  it('weight and arm along the grip: m·g and m·a at the contact that bears them', () => {
    const { mass } = teapot.part
    const moves = [{ start: 0.9, axis: 'along', acceleration: 20, duration: 0.4, jerk: 400 }]
    const along = { 'jaws.layout': 'anvil', 'arm.gravity': 'along', 'arm.moves': moves, 'part.crackForce': undefined }
    const slow = { 'approach.speed': 0.05, 'strategies.currentClamp.limit': 2, 'jaws.opening': 0.13 }
    const causes = told(make(teapot, { ...along, ...slow }), 'current-clamp')
    expect(causes('weight') / (mass * 9.81)).toBeGreaterThan(0.5)
    expect(causes('arm') / (mass * 20)).toBeGreaterThan(0.5)
  })

  it('a held position loses what the part relaxes, a clamp does not', () => {
    const apricot = PRESETS.find(({ id }) => id === 'apricot')!.scenario
    const late = make(apricot, {
      'arm.moves[0].start': 3,
      'arm.moves[1].start': 3.5,
      'run.duration': 4,
      'approach.speed': 0.02,
      'strategies.thresholdStop.threshold': 0.33,
    })
    const why = explain(late, 'threshold-stop', run(late, 'threshold-stop').result.verdict, run)
    expect(why.figure).toBe('hold')
    expect(why.causes.find(({ cause }) => cause === 'relaxation')!.share).toBeLessThan(-0.1)
    const smooth = {
      'strategies.currentClamp.limit': 0.33,
      'actuator.transmission.coulomb': 0,
      'actuator.transmission.breakaway': 0,
    }
    expect(told(make(late, smooth), 'current-clamp')('relaxation')).toBeGreaterThan(-0.02)
  })
})
