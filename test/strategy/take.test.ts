import { isDeepStrictEqual } from 'node:util'
import { describe, expect, it } from 'vitest'
import { Drive } from '../../sim/cycle/drive.ts'
import { STRATEGIES } from '../../sim/index.ts'
import { jobOf } from '../../sim/job/index.ts'
import { copyState } from '../../sim/run/mirror.ts'
import { fillMove } from '../../sim/strategy/follow.ts'
import type { Machine } from '../../sim/strategy/machine.ts'
import { Move } from '../../sim/strategy/move.ts'
import { make } from '../scenario/make.ts'
import { machineFor } from './drive.ts'

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
function follow(strategy: Machine, anew: () => Machine, ticks: number): void {
  let position = strategy.state.target
  for (let k = 0; k < ticks; k++) {
    const past = position - WALL
    strategy.tick(k * PERIOD, position, past > 0 ? STIFFNESS * past : 0)
    const next = anew()
    copyState(strategy, next)
    next.settle()
    if (!isDeepStrictEqual(next, strategy)) expect(next).toEqual(strategy) // which takes a hundred times as long
    position = Math.min(strategy.state.target, WALL + 2e-4)
  }
}

function moveFrom(travel: number, time: number): Move {
  const move = new Move()
  fillMove(move, scenario, jobOf(scenario).workOf(scenario))
  move.begin(travel, time)
  return move
}

describe('A strategy that goes on from where another one stands', () => {
  it.each(STRATEGIES.map((kind) => [kind.id, kind] as const))('has all of its state at every tick (%s)', (_, kind) => {
    const strategy = machineFor(scenario, kind)
    follow(strategy, () => machineFor(scenario, kind, 0.002, 3), 2000)
    expect(strategy.state.engaged).toBeGreaterThan(0)
  })

  it('has it on its way open, too', () => {
    follow(moveFrom(0.008, 0), () => moveFrom(0.001, 3), 1500)
  })

  it('presses on at once where it is now set to press', () => {
    const holds = make(scenario, { 'strategies.thresholdStop.afterwards': 'hold' })
    const kind = STRATEGIES.find(({ id }) => id === 'threshold-stop')!
    const one = machineFor(holds, kind)
    follow(one, () => machineFor(holds, kind), 2000)
    const next = machineFor(scenario, kind)
    copyState(one, next)
    next.settle()
    expect(next.state.target).toBeGreaterThan(one.state.target)
    const limit = scenario.strategies.currentClamp.limit
    expect(next.tick(0.5, WALL, 0)).toBe(limit)
    expect(one.tick(0.5, WALL, 0)).not.toBe(limit)
  })

  it('takes nothing from one of another kind', () => {
    const drives = STRATEGIES.slice(0, 2).map((kind) => new Drive(machineFor(scenario, kind)))
    const [stop, clamp] = drives as [Drive, Drive]
    for (let k = 0; k < 100; k++) stop.strategy.tick(k * PERIOD, 0, 0)
    const before = structuredClone(clamp.strategy)
    copyState(stop, clamp)
    expect(structuredClone(clamp.strategy)).toEqual(before)
  })
})
