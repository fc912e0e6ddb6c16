/** The live plant of a press, a closure and a web: their acts, the same bits as a run, and going on from a copied state. */
import base64 from 'virtual:core'
import { describe, expect, it } from 'vitest'
import {
  ALL_PRESETS,
  type Core,
  channelsOf,
  compiledCore,
  jobOf,
  LivePlant,
  type Scenario,
  type StrategyId,
  sourceCore,
  strategiesOn,
} from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { runCycle } from '../../sim/run/run.ts'
import { strategyOf } from '../../sim/strategy/index.ts'
import { make } from '../scenario/make.ts'

const compiled = new WebAssembly.Module(Buffer.from(base64, 'base64'))
const CORES: [string, () => Core][] = [
  ['in TypeScript', () => sourceCore],
  ['compiled', () => compiledCore(new WebAssembly.Instance(compiled).exports)],
]

const presetOf = (id: string): Scenario => ALL_PRESETS.find((preset) => preset.id === id)!.scenario

describe.each(CORES)('%s', (_core, newCore) => {
  const live = (scenario: Scenario, strategy: StrategyId = 'current-clamp') =>
    new LivePlant(scenario, strategy, newCore())
  const now = (plant: LivePlant, scenario: Scenario, id: string) =>
    plant.state.now[channelsOf(jobOf(scenario)).findIndex((each) => each.id === id)]!

  /** The bench as a run leaves it. */
  const ended = (scenario: Scenario, strategy: StrategyId) =>
    runCycle(modelOf(scenario, strategyOf(strategy)), { core: newCore() }).bench

  const press = presetOf('cast-arm')
  const cap = presetOf('jar-lid')
  const web = presetOf('tray-film')
  const OUT: Record<string, string> = { press: 'press', cap: 'tighten', web: 'pull' }

  describe.each([press, cap, web])('a live $job', (scenario) => {
    const strategies = strategiesOn(jobOf(scenario)).map(({ id }) => id)
    const out = OUT[scenario.job]!

    it('is at rest until it is told, and gives the same rows in pieces of any length', () => {
      const idle = live(scenario)
      idle.advance(0.2)
      expect(idle.state).toMatchObject({ phase: 'holding', powered: true, left: '' })
      expect(Math.abs(now(idle, scenario, 'travel'))).toBeLessThan(1e-4)
      const whole = live(scenario)
      whole.act(out)
      const rows = whole.advance(0.3)
      const parts = live(scenario)
      parts.act(out)
      const pieces: Float64Array[][] = []
      for (let left = 0.3; left > 1e-12; left -= 1 / 60) pieces.push(parts.advance(Math.min(1 / 60, left)))
      rows.forEach((column, c) => {
        expect(pieces.flatMap((piece) => [...piece[c]!])).toEqual([...column])
      })
      expect(parts.state).toEqual(whole.state)
    })

    it('is the same plant as a run', () => {
      // A web stands still in both.
      const alone = make(scenario, {
        'run.duration': 1.1,
        ...(scenario.job === 'web' && { 'line.ramps': [], 'window.from': 0.5 }),
      })
      for (const strategy of strategies) {
        const plant = live(alone, strategy)
        expect(plant.act(out)).toBe(true)
        plant.advance(1.1)
        const { axis, load } = ended(alone, strategy)
        expect(now(plant, alone, 'travel'), strategy).toBe(axis.state.travel)
        expect(now(plant, alone, 'speed'), strategy).toBe(axis.state.speed)
        expect(now(plant, alone, 'current'), strategy).toBe(axis.current())
        expect(plant.state.figures.peak, strategy).toBeGreaterThanOrEqual(load.effort())
      }
    })

    const MOMENTS: Record<string, (plant: LivePlant) => void> = {
      'at rest': (plant) => plant.advance(0.01),
      'on its way': (plant) => {
        plant.act(out)
        plant.advance(0.1234)
      },
      'at work': (plant) => {
        plant.act(out)
        plant.act('run')
        plant.advance(1.4)
      },
      'on its way back': (plant) => {
        plant.act(out)
        plant.act('run')
        plant.advance(1.4)
        plant.act({ press: 'drawBack', cap: 'turnBack', web: 'slacken' }[scenario.job as 'press'])
        plant.advance(0.05)
      },
      'without power': (plant) => {
        plant.act(out)
        plant.advance(0.9)
        plant.act('cutPower')
        plant.advance(0.01)
      },
    }
    for (const [moment, until] of Object.entries(MOMENTS))
      it(`goes on to the last bit under the same parameters, ${moment}`, () => {
        for (const strategy of strategies) {
          const [one, other] = [live(scenario, strategy), live(scenario, strategy)]
          until(one)
          until(other)
          other.change(structuredClone(scenario))
          const [a, b] = [one.advance(0.15), other.advance(0.15)]
          a.forEach((column, c) => {
            expect([...b[c]!]).toEqual([...column])
          })
          expect(other.state).toEqual(one.state)
        }
      })

    it('takes other gains under way, and starts anew under what makes it another machine', () => {
      const plant = live(scenario)
      plant.act(out)
      plant.advance(0.9)
      const before = plant.state
      plant.change(make(scenario, { 'servo.kp': 1.2 * scenario.servo.kp }))
      expect(plant.state).toEqual(before)
      const other = { press: 'ram.gap', cap: 'chuck.startAngle', web: 'span.length' }[scenario.job as 'press']
      const value = { press: 0.021, cap: 3, web: 1.1 }[scenario.job as 'press']
      const warm = now(plant, scenario, 'temperature')
      plant.change(make(scenario, { [other]: value }))
      expect(plant.state).toMatchObject({ phase: 'holding', time: before.time })
      plant.advance(0.01)
      expect(Math.abs(now(plant, scenario, 'travel'))).toBeLessThan(1e-4)
      expect(now(plant, scenario, 'temperature')).toBeCloseTo(warm, 1)
    })
  })

  describe('a live press', () => {
    it('seats, draws back and leaves the bushing, and takes a new joint only once the ram is out of the way', () => {
      const plant = live(press)
      plant.act('press')
      plant.advance(2)
      const { events, able } = plant.state
      expect(events.seat).toBeGreaterThan(events.touch!)
      expect(events).toMatchObject({ over: null, above: null, below: null })
      expect(able).not.toContain('press')
      expect(plant.act('newJoint')).toBe(false)
      const depth = now(plant, press, 'depth')
      plant.act('drawBack')
      plant.advance(1.5)
      expect(now(plant, press, 'travel')).toBeLessThan(0.001)
      expect(Math.abs(now(plant, press, 'depth') - depth)).toBeLessThan(5e-5)
      expect(plant.act('newJoint')).toBe(true)
      expect(plant.state.events.touch).toBeNull()
      expect(plant.act('newJoint')).toBe(false)
      plant.act('press')
      plant.advance(2)
      expect(plant.state.events.seat).toBeGreaterThan(events.seat!)
    })

    it('jams in a bore that grips too hard, and goes home once the fit is loosened under it', () => {
      const tight = make(press, { 'bushing.interference': 4e-5 })
      const plant = live(tight)
      plant.act('press')
      plant.advance(2.5)
      expect(plant.state.events.seat).toBeNull()
      expect(plant.state.events.above).not.toBeNull()
      expect(Math.abs(now(plant, tight, 'speed'))).toBeLessThan(1e-4)
      plant.change(press)
      plant.advance(1)
      expect(plant.state.events.seat).not.toBeNull()
    })
  })

  describe('a live closure', () => {
    it('is tightened, turned off again by the head, and on once more', () => {
      const plant = live(cap)
      plant.act('tighten')
      plant.advance(1.2)
      expect(plant.state.events).toMatchObject({ strip: null, jam: null, over: null })
      const torque = now(plant, cap, 'threadTorque')
      expect(torque).toBeGreaterThan(2.82)
      plant.act('turnBack')
      const off = Math.min(...plant.advance(1.5)[channelsOf(jobOf(cap)).findIndex(({ id }) => id === 'threadTorque')]!)
      expect(-off).toBeGreaterThan(1.5) // what breaks it loose
      expect(-off).toBeLessThan(torque)
      expect(plant.state.facts.onThread).toBe(false)
      plant.act('tighten')
      plant.advance(1.2)
      expect(now(plant, cap, 'threadTorque')).toBeGreaterThan(2.82)
    })

    it('stays tight where the chuck lets go, and the head takes the next jar', () => {
      const plant = live(cap)
      plant.act('tighten')
      plant.advance(1.2)
      const preload = now(plant, cap, 'preload')
      plant.act('letGo')
      plant.advance(1.2)
      expect(plant.state.facts.held).toBe(false)
      expect(plant.state.able).toContain('newJar')
      expect(plant.state.able).not.toContain('tighten')
      expect(now(plant, cap, 'preload') / preload).toBeGreaterThan(0.95)
      plant.act('newJar')
      expect(plant.state).toMatchObject({ facts: { held: true }, events: { start: null, touch: null } })
      plant.advance(0.05)
      expect(Math.abs(now(plant, cap, 'torque'))).toBeLessThan(0.01) // the chuck takes it without a jerk
    })

    it('gives the next closure to a head that stands anywhere before the thread', () => {
      const plant = live(cap)
      plant.act('tighten')
      plant.advance(1.2)
      plant.act('letGo')
      while (!plant.state.able.includes('newJar')) plant.advance(0.005)
      plant.act('cutPower')
      plant.advance(0.5)
      const travel = now(plant, cap, 'travel')
      expect(travel).toBeGreaterThan(0.3)
      plant.act('newJar')
      plant.advance(0.02)
      expect(now(plant, cap, 'angle')).toBeCloseTo(travel, 2)
      expect(Math.abs(now(plant, cap, 'torque'))).toBeLessThan(0.01)
    })

    it('strips where the thread is made weaker under the torque, once and for all', () => {
      const plant = live(cap)
      plant.act('tighten')
      plant.advance(1.2)
      plant.change(make(cap, { 'closure.stripTorque': 3, 'strategies.currentClamp.limit': 8 }))
      plant.advance(1)
      expect(plant.state.events.strip).not.toBeNull()
      plant.change(cap)
      plant.advance(0.2)
      expect(plant.state.events.strip).not.toBeNull()
    })
  })

  describe('a live web', () => {
    it('is the same to the last bit as a run whose line starts at that instant', () => {
      for (const strategy of ['current-clamp', 'sensed-force'] as const) {
        const plant = live(web, strategy)
        plant.act('pull')
        plant.advance(1.5)
        const start = plant.time
        const ramp = { start, speed: 0.6, acceleration: 2, jerk: 20 }
        const same = make(web, { 'line.ramps': [ramp], 'run.duration': 2.5 })
        plant.act('run')
        plant.advance(2.5 - start)
        const { axis, load } = ended(same, strategy)
        expect(now(plant, web, 'travel'), strategy).toBe(axis.state.travel)
        expect(now(plant, web, 'current'), strategy).toBe(axis.current())
        expect(now(plant, web, 'tension'), strategy).toBe(load.effort())
        expect(now(plant, web, 'lineSpeed')).toBeCloseTo(0.6, 3)
      }
    })

    it('runs and stops when it is told, also in the middle of a ramp, without a jerk of the line', () => {
      const plant = live(web)
      plant.act('pull')
      plant.advance(1.5)
      expect(plant.state.able).toEqual(expect.arrayContaining(['slacken', 'run']))
      expect(plant.state.able).not.toContain('halt')
      plant.act('run')
      plant.advance(0.15)
      const middle = now(plant, web, 'lineSpeed')
      expect(middle).toBeGreaterThan(0.1)
      expect(middle).toBeLessThan(0.5)
      expect(plant.act('halt')).toBe(true)
      const [time, ...columns] = plant.advance(1)
      const speed = columns[channelsOf(jobOf(web)).findIndex(({ id }) => id === 'lineSpeed') - 1]!
      for (let row = 2; row < speed.length; row += 2)
        expect(Math.abs(speed[row]! - speed[row - 2]!)).toBeLessThan(2.2 * (time![row]! - time![row - 2]!) + 1e-4)
      expect(speed.at(-1)!).toBeCloseTo(0, 9)
      expect(plant.state.events).toMatchObject({ torn: null, over: null })
      expect(plant.state.facts.hangs).toBe(false)
    })

    it('runs on for longer than any run, without leaving its rails', () => {
      const plant = live(web)
      plant.act('pull')
      plant.advance(1.5)
      plant.act('run')
      plant.advance(20)
      expect(now(plant, web, 'travel')).toBeGreaterThan(300)
      expect(plant.state.left).toBe('')
      expect(Math.abs(plant.state.figures.effort - 18)).toBeLessThan(3)
    })

    it('tears where its strength falls below its tension, hangs slack, and is threaded anew once the line stands', () => {
      const plant = live(web)
      plant.act('pull')
      plant.advance(1.5)
      plant.act('run')
      plant.advance(1)
      plant.change(make(web, { 'web.breakTension': 15 }))
      plant.advance(0.2)
      expect(plant.state.events.torn).not.toBeNull()
      expect(now(plant, web, 'tension')).toBe(0)
      expect(plant.state.able).not.toContain('newWeb')
      plant.act('halt')
      plant.advance(1)
      plant.change(web)
      expect(plant.act('newWeb')).toBe(true)
      expect(plant.state).toMatchObject({ phase: 'holding', events: { torn: null, taut: null } })
      plant.act('pull')
      plant.advance(1.5)
      expect(plant.state.events.taut).not.toBeNull()
    })

    it('goes slack when it is let, and is pulled taut again from wherever it hangs', () => {
      const plant = live(web)
      plant.act('pull')
      plant.act('run')
      plant.advance(2)
      plant.act('slacken')
      plant.advance(0.8)
      expect(plant.state).toMatchObject({ phase: 'returning', facts: { hangs: true } })
      expect(plant.state.events.slack).not.toBeNull()
      expect(now(plant, web, 'slack')).toBeCloseTo(0.01, 2)
      plant.act('pull')
      plant.advance(2)
      expect(plant.state).toMatchObject({ facts: { hangs: false }, events: { slack: null } })
      expect(Math.abs(plant.state.figures.effort - 18)).toBeLessThan(3)
    })

    it.each(['current-clamp', 'sensed-force'] as const)(
      'does not make up for what ran by without power, by %s',
      (strategy) => {
        const plant = live(web, strategy)
        plant.act('pull')
        plant.act('run')
        plant.advance(2)
        plant.act('cutPower')
        plant.advance(0.5)
        const slack = now(plant, web, 'slack')
        plant.act('restorePower')
        plant.advance(0.5)
        expect(Math.abs(now(plant, web, 'rimSpeed') - 0.6)).toBeLessThan(0.1)
        expect(slack).toBeGreaterThan(0.02)
        // What the roll takes back as it comes to the line's speed again is less than half; made up for, all of it would be gone.
        expect(now(plant, web, 'slack') / slack).toBeGreaterThan(0.5)
        plant.act('pull')
        plant.advance(12)
        expect(plant.state.facts.hangs).toBe(false)
      },
    )
  })
})
