/** What a bench that runs on says of itself, and the move that shakes it. */

import { MOVE_SIZE } from '../axis/arm.ts'
import { DIRECTIONS } from '../axis/fill-arm.ts'
import type { Bench } from '../cycle/bench.ts'
import { NUMBERS, TRAVEL } from '../cycle/rails.ts'
import { jobOf } from '../job/index.ts'
import type { LiveAct, LiveFigures, LiveHands, LiveState } from '../job/live.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'

/** What every plant knows beside the acts of its job. */
export const CUT = 'cutPower'
export const RESTORE = 'restorePower'

/** A shake in a direction in which the scenario's arm does not move; common practice for a quick robot, no source. */
const SHAKE = { acceleration: 10, duration: 0.2, jerk: 1000 }

/** The move that a shake makes: the scenario's own in that direction, if it has one. */
export function shakeOf({ arm }: Scenario, axis: ArmMove['axis']): ArmMove {
  return { ...(arm.moves.find((move) => move.axis === axis) ?? { ...SHAKE, axis }), start: 0 }
}

/** The same as the arm takes it. */
export const shakeMove = (scenario: Scenario, axis: ArmMove['axis']) => ({
  ...shakeOf(scenario, axis),
  axis: DIRECTIONS[axis],
})

export const actsOf = (scenario: Scenario): LiveAct[] => jobOf(scenario).live.groups.flatMap(({ acts }) => acts)

/** The plant in somebody's hands. */
export const handsOf = (scenario: Scenario, bench: Bench): LiveHands => ({
  load: bench.load,
  arm: bench.arm,
  follower: bench.drive.follower,
  scenario,
  time: bench.time(),
  travel: bench.axis.state.travel,
  motorTravel: bench.axis.state.motorTravel,
  shaken: movesOf(bench).some(({ start, duration }) => bench.time() < start + duration),
})

/** Whether an act makes sense now: what moves the output takes power, and a strategy that works does not set out. */
export function canNow({ kind, can }: LiveAct, at: LiveHands, { drive }: Bench): boolean {
  const powered = drive.state.powered > 0
  if ((kind === 'out' || kind === 'back') && !powered) return false
  if (kind === 'out' && drive.state.moving === 0) return false
  return can?.(at) ?? true
}

/** `now` is the newest sample, a copy; the bench's arrays are as they stand. */
export function stateOf(scenario: Scenario, bench: Bench, now: Float64Array): LiveState {
  const { drive, load } = bench
  const { live } = jobOf(scenario)
  const at = handsOf(scenario, bench)
  const left = leftOf(bench)
  const powered = drive.state.powered > 0
  const able = actsOf(scenario).filter((act) => canNow(act, at, bench))
  const events = live.events.map(({ id, at: when }) => [id, known(when(load, at.time))] as const)
  return {
    time: at.time,
    now,
    phase: drive.state.opening > 0 ? 'returning' : drive.state.moving > 0 ? 'holding' : 'working',
    engaged: !Number.isNaN(drive.machine().state.engaged),
    powered,
    able: left === '' ? [...able.map(({ id }) => id), powered ? CUT : RESTORE] : [],
    events: Object.fromEntries(events),
    facts: Object.fromEntries(Object.entries(live.facts).map(([id, holds]) => [id, holds(load)])),
    inHand: live.inHand(load),
    moves: movesOf(bench),
    figures: figuresOf(bench),
    left,
  }
}

const known = (time: number) => (Number.isNaN(time) ? null : time)

/** The moves of the arm as it holds them. */
export function movesOf({ arm }: Bench): ArmMove[] {
  const names = Object.entries(DIRECTIONS) as [ArmMove['axis'], number][]
  return Array.from({ length: arm.count }, (_, n) => {
    const [start = 0, direction, acceleration = 0, duration = 0, jerk = 0] = arm.moves.slice(MOVE_SIZE * n)
    const axis = names.find(([, number]) => number === direction)?.[0] ?? 'along'
    return { start, axis, acceleration, duration, jerk }
  })
}

/** From the sums over all blocks: samples, effort, its squares, current, changes of direction. */
function figuresOf({ latest }: Bench): LiveFigures {
  const count = Math.max(1, latest.total(0))
  const mean = latest.total(1) / count
  return {
    effort: mean,
    ripple: Math.sqrt(Math.max(0, latest.total(2) / count - mean * mean)),
    current: latest.total(3) / count,
    reversals: latest.total(4) / (count * latest.period),
    peak: latest.state.peak,
  }
}

const leftOf = ({ rails }: Bench): LiveState['left'] =>
  rails.state.cause === NUMBERS ? 'numbers' : rails.state.cause === TRAVEL ? 'travel' : ''
