import { describe, expect, it } from 'vitest'
import { STRATEGIES } from '../../sim/index.ts'
import { Move } from '../../sim/strategy/move.ts'
import type { Strategy } from '../../sim/strategy/strategy.ts'
import { make } from '../scenario/make.ts'

const scenario = make(
  {},
  {
    'servo.ki': 3000,
    'strategies.thresholdStop.afterwards': 'press',
    'strategies.thresholdStop.filter': 0.003,
    'strategies.thresholdStop.confirmTime': 0.004,
    'strategies.currentClamp.from': 0.08,
    'strategies.sensedForce.ki': 0.002,
    'strategies.sensedForce.kd': 1e-6,
    'strategies.sensedForce.rate': 500,
  },
)
const WALL = 0.01
const STIFFNESS = 2e5
const PERIOD = 1 / scenario.servo.rate

/** The axis follows the target into a stiff wall; after each tick another strategy takes over and is looked at. */
function follow(strategy: Strategy, anew: () => Strategy, ticks: number): void {
  let position = strategy.target
  for (let k = 0; k < ticks; k++) {
    const past = position - WALL
    strategy.tick({ time: k * PERIOD, position, force: past > 0 ? STIFFNESS * past : 0 })
    const next = anew()
    next.take?.(strategy)
    expect(next).toEqual(strategy)
    position = Math.min(strategy.target, WALL + 2e-4)
  }
}

describe('A strategy that goes on from where another one stands', () => {
  it.each(STRATEGIES.map((kind) => [kind.id, kind] as const))('has all of its state at every tick (%s)', (_, kind) => {
    const strategy = kind.create(scenario)
    follow(strategy, () => kind.create(scenario), 2000)
    expect(strategy.engaged).toBeGreaterThan(0)
  })

  it('has it on its way open, too', () => {
    const start = { travel: 0.008, time: 0 }
    follow(new Move(scenario, start, 0), () => new Move(scenario, { travel: 0.001, time: 3 }, 0), 1500)
  })

  it('presses on at once where it is now set to press', () => {
    const holds = make(scenario, { 'strategies.thresholdStop.afterwards': 'hold' })
    const kind = STRATEGIES.find(({ id }) => id === 'threshold-stop')!
    const one = kind.create(holds)
    follow(one, () => kind.create(holds), 2000)
    const next = kind.create(scenario)
    next.take?.(one)
    expect(next.target).toBeGreaterThan(one.target)
    const limit = scenario.strategies.currentClamp.limit
    expect(next.tick({ time: 0.5, position: WALL, force: 0 })).toBe(limit)
    expect(one.tick({ time: 0.5, position: WALL, force: 0 })).not.toBe(limit)
  })

  it('takes nothing from one of another kind', () => {
    const [stop, clamp] = STRATEGIES.map((kind) => kind.create(scenario))
    for (let k = 0; k < 100; k++) stop!.tick({ time: k * PERIOD, position: 0, force: 0 })
    const before = structuredClone(clamp)
    clamp!.take?.(stop!)
    expect(structuredClone(clamp)).toEqual(before)
  })
})
