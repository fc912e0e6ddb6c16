/** The newest instant of the live plant as the picture needs it. */
import { CHANNELS, type LiveState, type Scenario, type Traces } from '../../../sim/index.ts'
import { armAt } from '../../picture/grip/armMove.ts'
import type { SideName } from '../../picture/grip/contact.ts'
import { frameAt, type GripFrame } from '../../picture/grip/frameAt.ts'

const SIDES = { near: 'driven', far: 'far' } as const

export function liveFrame(scenario: Scenario, state: LiveState): GripFrame {
  const traces = Object.fromEntries(CHANNELS.map(({ id }, c) => [id, state.now.subarray(c, c + 1)])) as Traces
  const marked: SideName[] = []
  const { events, facts } = state
  if (facts.nearMarked) marked.push(SIDES.near)
  if (facts.farMarked) marked.push(SIDES.far)
  return {
    ...frameAt({ scenario, result: null, traces, rows: 1 }, state.time),
    supported: facts.supported ?? true,
    fallen: events.lost == null ? null : state.time - events.lost,
    crack: events.crack == null ? null : SIDES[facts.crackedFar ? 'far' : 'near'],
    marked,
    arm: armAt([...state.moves], state.time),
    unstable: state.left !== '',
  }
}

/** Less than is seen, through the magnifier as well: of lengths [m], an angle [rad], the shade of a coil [A], and of forces and accelerations as a share. */
const UNSEEN = { length: 5e-8, angle: 1e-4, current: 0.02, share: 5e-4 }

/** Whether two instants give the same picture: a plant at rest differs by its noise alone, and need not be drawn again. */
export function looksAlike(a: GripFrame, b: GripFrame): boolean {
  const near = (one: number, other: number, unseen: number) => Math.abs(one - other) <= unseen
  const length = (pick: (frame: GripFrame) => number) => near(pick(a), pick(b), UNSEEN.length)
  const share = (one: number, other: number) =>
    near(one, other, UNSEEN.share * Math.max(Math.abs(one), Math.abs(other)))
  return (
    a.fallen === null &&
    b.fallen === null &&
    a.crack === b.crack &&
    a.supported === b.supported &&
    a.unstable === b.unstable &&
    a.marked.join() === b.marked.join() &&
    LENGTHS.every(length) &&
    near(a.turn, b.turn, UNSEEN.angle) &&
    near(a.current, b.current, UNSEEN.current) &&
    share(a.force, b.force) &&
    share(a.farForce, b.farForce) &&
    share(a.arm.up, b.arm.up) &&
    share(a.arm.across, b.arm.across) &&
    share(a.arm.along, b.arm.along)
  )
}

const LENGTHS: ((frame: GripFrame) => number)[] = [
  ({ travel }) => travel,
  ({ motorTravel }) => motorTravel,
  ({ partShift }) => partShift,
  ({ sag }) => sag,
  ({ drift }) => drift,
  ({ dent }) => dent,
  ...(['driven', 'far'] as const).flatMap((side) => [
    ({ contacts }: GripFrame) => contacts[side].overlap,
    ({ contacts }: GripFrame) => contacts[side].pad,
    ({ contacts }: GripFrame) => contacts[side].part,
  ]),
]
