import base64 from 'virtual:core'
import { describe, expect, it } from 'vitest'
import {
  CHANNELS,
  type Core,
  compiledCore,
  hunts,
  LivePlant,
  PRESETS,
  STRATEGIES,
  type StrategyId,
  simulateGrip,
  sourceCore,
} from '../../sim/index.ts'
import { make } from '../scenario/make.ts'

const compiled = new WebAssembly.Module(Buffer.from(base64, 'base64'))

/** Both executions of the core: a live bench has one of its own. */
const CORES: [string, () => Core][] = [
  ['in TypeScript', () => sourceCore],
  ['compiled', () => compiledCore(new WebAssembly.Instance(compiled).exports)],
]

describe.each(CORES)('%s', (_core, newCore) => {
  const teapot = PRESETS.find(({ id }) => id === 'teapot')!.scenario
  const edited = (edits: Record<string, unknown>) => make(teapot, edits)
  const channel = (id: string) => CHANNELS.findIndex((each) => each.id === id)
  const TRAVEL = channel('travel')
  /** Error of the force that the sensed force leaves alone [N]. */
  const deadBand = teapot.strategies.sensedForce.deadband / teapot.strategies.sensedForce.kp

  const live = (strategy: StrategyId = 'current-clamp', scenario = teapot) =>
    new LivePlant(scenario, strategy, newCore())
  const joined = (pieces: Float64Array[][]) => CHANNELS.map((_, c) => pieces.flatMap((piece) => [...piece[c]!]))
  const now = (grip: LivePlant, id: string) => grip.state.now[channel(id)]!

  /** A grip that holds the teapot, its support gone. */
  function gripped(strategy: StrategyId = 'current-clamp', scenario = teapot): LivePlant {
    const grip = live(strategy, scenario)
    grip.act('close')
    grip.advance(0.8)
    return grip
  }

  describe('Live grip, in time', () => {
    it('gives the same rows in pieces of any length as in one piece, and the same at every pace', () => {
      const whole = live()
      whole.act('close')
      const rows = joined([whole.advance(0.3)])
      expect(rows[0]!.length).toBeGreaterThan(1000)
      for (const frame of [1 / 60, 1 / 600, 1 / 6000, 0.0431]) {
        const grip = live()
        grip.act('close')
        const pieces: Float64Array[][] = []
        for (let left = 0.3; left > 1e-12; left -= frame) pieces.push(grip.advance(Math.min(frame, left)))
        expect(joined(pieces)).toEqual(rows)
        expect(grip.state.now).toEqual(whole.state.now)
      }
    })

    it('is the same plant as a run', () => {
      const alone = edited({ 'arm.moves': [], 'arm.lift': 0.79, 'run.duration': 0.8 })
      for (const { id } of STRATEGIES) {
        const grip = live(id, alone)
        grip.act('close')
        grip.advance(0.78)
        expect(grip.state.figures.peak).toBe(simulateGrip(alone, id).result.metrics.peakForce)
      }
    })

    it('keeps the extremes of each bucket', () => {
      const grip = live('current-clamp')
      grip.act('close')
      const columns = grip.advance(0.4)
      expect(Math.max(...columns[channel('force')]!)).toBe(grip.state.figures.peak)
      expect(columns.every((column) => column.length === columns[0]!.length)).toBe(true)
      expect(columns[0]!.length).toBe(2 * 800)
    })

    it('fires none of the scenario’s events', () => {
      const busy = edited({
        'events.powerLoss': { time: 0.1, windings: 'open' },
        'events.release': { time: 0.6 },
        'arm.lift': 0.5,
        'arm.moves': [{ start: 0.55, axis: 'up', acceleration: 10, duration: 0.2, jerk: 1000 }],
      })
      const grip = gripped('current-clamp', busy)
      expect(grip.state).toMatchObject({
        powered: true,
        phase: 'working',
        facts: { supported: true },
        moves: [],
        events: { lost: null },
      })
      expect(grip.state.figures.effort).toBeGreaterThan(30)
    })

    it('stands still where the numbers end', () => {
      const coarse = { 'run.step': 5e-5, 'actuator.transmission.stiffness': 1e10, 'jaws.mass': 0.001 }
      const grip = live('current-clamp', edited(coarse))
      grip.act('close')
      const columns = grip.advance(1)
      expect(grip.state.left).not.toBe('')
      expect(grip.time).toBeLessThan(1)
      expect(columns[0]!.length).toBeLessThan(4000)
      expect(grip.advance(1)[0]!.length).toBe(0)
    })
  })

  describe('Live grip, changed while it runs', () => {
    const moments: Record<string, (grip: LivePlant) => void> = {
      'at rest': (grip) => grip.advance(0.01),
      'on its way': (grip) => {
        grip.act('close')
        grip.advance(0.1234)
      },
      'at the impact': (grip) => {
        grip.act('close')
        grip.advance(0.2335)
      },
      'in the shaken hand': (grip) => {
        grip.act('close')
        grip.advance(0.6)
        grip.act('along')
        grip.advance(0.05)
      },
      'on its way open': (grip) => {
        grip.act('close')
        grip.advance(0.5)
        grip.act('open')
        grip.advance(0.05)
      },
      'while the part slides': (grip) => {
        grip.act('close')
        grip.advance(0.6)
        grip.act('across')
        grip.advance(0.045)
      },
      'after the part is lost': (grip) => {
        grip.act('lift')
        grip.act('close')
        grip.advance(0.3)
      },
      'without power': (grip) => {
        grip.act('close')
        grip.advance(0.5)
        grip.act('lift')
        grip.act('cutPower')
        grip.advance(0.01)
      },
    }
    const rich = edited({
      'part.relaxation': { fraction: 0.3, time: 0.2 },
      'part.yieldForce': 35,
      'drive.currentNoise': 0.01,
      'sensors.gauge.noise': 0.05,
      'strategies.currentClamp.from': 0.075,
      'jaws.friction': { static: 0.15, sliding: 0.1, loadExponent: 0.8, referenceForce: 20 },
    })
    for (const [moment, until] of Object.entries(moments))
      for (const scenario of [teapot, rich])
        it(`goes on to the last bit under the same parameters, ${moment}${scenario === rich ? ', with noise and memory' : ''}`, () => {
          for (const { id } of STRATEGIES) {
            const one = live(id, scenario)
            const other = live(id, scenario)
            until(one)
            until(other)
            other.change(structuredClone(scenario))
            expect(joined([other.advance(0.2)])).toEqual(joined([one.advance(0.2)]))
            expect(other.state).toEqual(one.state)
          }
        })

    it('keeps the state under other parameters', () => {
      const grip = gripped()
      grip.act('lift')
      grip.advance(0.1)
      const before = grip.state
      grip.change(edited({ 'servo.kp': 2 * teapot.servo.kp, 'part.stiffness': 0.8 * teapot.part.stiffness }))
      expect(grip.state).toEqual(before)
      grip.advance(1 / teapot.drive.currentRate)
      const after = grip.state
      const period = 1 / teapot.drive.currentRate
      expect(after.time).toBeCloseTo(before.time + period, 12)
      for (const id of ['travel', 'motorTravel', 'partShift', 'sag', 'drift'])
        expect(Math.abs(after.now[channel(id)]! - before.now[channel(id)]!)).toBeLessThan(1e-6)
      expect(after.now[channel('temperature')]).toBeCloseTo(before.now[channel('temperature')]!, 3)
      expect(after.now[channel('current')]).toBeCloseTo(before.now[channel('current')]!, 2)
    })

    it('hunts when a gain is turned up, and is calm when it is turned back', () => {
      const { kp } = teapot.strategies.sensedForce.velocity
      const grip = gripped('sensed-force')
      grip.advance(0.7)
      expect(hunts(grip.state.figures)).toBe(false)
      // Another force with it: a jaw at rest sits in its friction, and no gain wakes it.
      const { target } = teapot.strategies.sensedForce
      grip.change(
        edited({ 'strategies.sensedForce.velocity.kp': 10 * kp, 'strategies.sensedForce.target': 0.75 * target }),
      )
      grip.advance(1)
      const { reversals, ripple } = grip.state.figures
      expect(hunts(grip.state.figures)).toBe(true)
      expect(reversals).toBeGreaterThan(100)
      expect(ripple).toBeGreaterThan(1)
      grip.change(teapot)
      grip.advance(1)
      expect(hunts(grip.state.figures)).toBe(false)
      expect(grip.state.figures.ripple).toBeLessThan(ripple / 5)
      expect(Math.abs(grip.state.figures.effort - 40)).toBeLessThan(deadBand)
    })

    it('takes the weight without a swing when the support goes right after a change', () => {
      const sags = [true, false].map((changed) => {
        const grip = gripped()
        if (changed) grip.change(structuredClone(teapot))
        grip.act('lift')
        grip.advance(0.001)
        return now(grip, 'sag')
      })
      expect(sags[0]).toBeGreaterThan(1e-5)
      expect(sags[0]).toBe(sags[1])
    })

    it('has no jump where only the rate of the current loop changes', () => {
      const grip = gripped()
      const before = grip.state
      grip.change(edited({ 'drive.currentRate': 2 * teapot.drive.currentRate }))
      expect(grip.time).toBe(before.time)
      const [time, force] = grip.advance(0.1)
      expect(time![0]).toBeCloseTo(before.time, 4)
      // Noise of the current, of a clamp that holds.
      for (const value of force!) expect(Math.abs(value - before.figures.effort)).toBeLessThan(0.25)
    })

    it('goes on from where it is when the way itself changes', () => {
      const grip = live()
      grip.act('close')
      grip.advance(0.15)
      const target = now(grip, 'target')
      expect(target).toBeGreaterThan(0)
      grip.change(edited({ 'approach.speed': teapot.approach.speed / 2 }))
      grip.advance(0.001)
      expect(Math.abs(now(grip, 'target') - target)).toBeLessThan(1e-6)
      grip.advance(1)
      expect(grip.state.engaged).toBe(true)
    })

    it('breaks a part that now takes less than it bears, once and for all', () => {
      const grip = gripped()
      grip.change(edited({ 'part.crackForce': 30 }))
      expect(grip.state.events.crack).toBeNull()
      grip.advance(0.001)
      expect(grip.state.events.crack).not.toBeNull()
      grip.change(teapot)
      grip.advance(0.2)
      expect(grip.state.events.crack).not.toBeNull()
      expect(now(grip, 'travel')).toBeGreaterThan(now(gripped(), 'travel') + 1e-4)
    })

    it('keeps a dent when the part no longer yields', () => {
      const grip = gripped('current-clamp', rich)
      const { dent, travel } = { dent: now(grip, 'dent'), travel: now(grip, 'travel') }
      expect(dent).toBeGreaterThan(1e-6)
      grip.change(teapot)
      grip.advance(0.01)
      expect(now(grip, 'dent')).toBe(dent)
      expect(now(grip, 'travel')).toBeGreaterThan(travel - dent / 4) // it does not spring back
    })

    it('starts open and warm with another width, without power if it had none', () => {
      const grip = gripped()
      const { now: before, time } = grip.state
      const wider = edited({ 'part.width': teapot.part.width + 0.002 })
      grip.change(wider)
      grip.advance(0.01)
      expect(grip.state).toMatchObject({
        phase: 'holding',
        facts: { supported: true },
        events: { crack: null },
        powered: true,
      })
      expect(grip.time).toBeCloseTo(time + 0.01, 9)
      expect(Math.abs(now(grip, 'travel'))).toBeLessThan(1e-6)
      expect(now(grip, 'temperature')).toBeCloseTo(before[channel('temperature')]!, 2)
      grip.act('cutPower')
      grip.change(teapot)
      expect(grip.state.powered).toBe(false)
    })

    it('changes nothing where the scenario asks for too small a step', () => {
      const grip = gripped()
      const before = grip.state
      const endless = { ...teapot, run: { ...teapot.run, duration: 600, step: 1e-8 } }
      expect(() => grip.change(endless)).toThrow(RangeError)
      expect(grip.state).toEqual(before)
    })

    it('opens the jaws for another strategy, which then grips', () => {
      const grip = gripped()
      grip.act('lift')
      grip.changeStrategy('sensed-force')
      expect(grip.state).toMatchObject({ phase: 'returning', facts: { supported: true }, events: { crack: null } })
      grip.advance(0.6)
      expect(now(grip, 'travel')).toBeCloseTo(0, 4)
      grip.act('close')
      grip.advance(1)
      expect(grip.state).toMatchObject({ engaged: true, events: { crack: null } })
      expect(Math.abs(grip.state.figures.effort - 40)).toBeLessThan(deadBand)
    })
  })

  describe('Live grip, in the person’s hand', () => {
    it('holds still until it is told to close', () => {
      const grip = live()
      grip.advance(0.2)
      expect(grip.state).toMatchObject({ phase: 'holding', powered: true, facts: { supported: true } })
      expect(Math.abs(now(grip, 'travel'))).toBeLessThan(1e-6)
    })

    it('closes, and opens again with the part set down', () => {
      const grip = gripped()
      grip.act('lift')
      grip.advance(0.05)
      expect(grip.state.facts.supported).toBe(false)
      grip.act('open')
      grip.advance(0.6)
      expect(grip.state).toMatchObject({ phase: 'returning', facts: { supported: true }, events: { lost: null } })
      expect(now(grip, 'force')).toBe(0)
      expect(now(grip, 'travel')).toBeCloseTo(0, 4)
      grip.act('close')
      grip.advance(0.8)
      expect(grip.state.figures.effort).toBeGreaterThan(30)
    })

    it('does not start to close again while it grips', () => {
      const other = gripped()
      other.act('close')
      expect(joined([other.advance(0.2)])).toEqual(joined([gripped().advance(0.2)]))
    })

    it('closes from half way without a jump', () => {
      const grip = live()
      grip.act('close')
      grip.advance(0.8)
      grip.act('open')
      grip.advance(0.2)
      const half = now(grip, 'travel')
      expect(half).toBeGreaterThan(0.001)
      grip.act('close')
      const columns = grip.advance(0.02)
      expect(Math.abs(columns[TRAVEL]!.at(-1)! - half)).toBeLessThan(0.002)
      grip.advance(0.6)
      expect(grip.state.engaged).toBe(true)
    })

    it('leaves the support with the first shake, and what nothing grips stays behind', () => {
      const grip = gripped()
      grip.act('up')
      grip.act('up') // one is going on
      expect(grip.state.moves.length).toBe(1)
      expect(grip.state.facts.supported).toBe(false)
      grip.advance(1)
      expect(grip.state).toMatchObject({ events: { lost: null }, facts: { supported: false } })
      grip.act('across')
      expect(grip.state.moves.map(({ axis }) => axis)).toEqual(['across'])

      const empty = live()
      empty.advance(0.01)
      empty.act('up')
      empty.advance(0.01)
      expect(empty.state.events.lost).toBeCloseTo(0.01, 3)
      expect(empty.state.facts.supported).toBe(false)
    })

    it('drops the part of a back-drivable axis without power, and moves nothing when power is back', () => {
      const voiceCoil = PRESETS.find(({ id }) => id === 'bauble')!.scenario
      const grip = gripped('current-clamp', voiceCoil)
      grip.act('lift')
      grip.advance(0.1)
      grip.act('cutPower')
      grip.act('close') // not without power
      grip.advance(1)
      expect(grip.state).toMatchObject({ powered: false })
      expect(now(grip, 'current')).toBe(0)
      expect(grip.state.events.lost).not.toBeNull()
      const travel = now(grip, 'travel')
      grip.act('restorePower')
      grip.advance(0.3)
      expect(grip.state).toMatchObject({ powered: true, phase: 'holding' })
      expect(now(grip, 'travel')).toBeCloseTo(travel, 4)
    })

    it('takes a new part only where there is room for it', () => {
      const grip = gripped('current-clamp', edited({ 'part.crackForce': 30 }))
      expect(grip.state.events.crack).not.toBeNull()
      expect(grip.act('newPart')).toBe(false)
      grip.act('open')
      grip.advance(0.6)
      expect(grip.act('newPart')).toBe(true)
      expect(grip.state).toMatchObject({ events: { crack: null }, facts: { supported: true } })
    })
  })
})
