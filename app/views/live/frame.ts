/** The newest instant of the live plant as the picture needs it. */
import { CHANNELS, type LiveState, type Scenario, type Traces } from '../../../sim/index.ts'
import { armAt } from '../../picture/grip/armMove.ts'
import type { SideName } from '../../picture/grip/contact.ts'
import { frameAt, type GripFrame } from '../../picture/grip/frameAt.ts'

const SIDES = { near: 'driven', far: 'far' } as const

export function liveFrame(scenario: Scenario, state: LiveState): GripFrame {
  const traces = Object.fromEntries(CHANNELS.map(({ id }, c) => [id, state.now.subarray(c, c + 1)])) as Traces
  const marked: SideName[] = []
  if (state.marked.near) marked.push(SIDES.near)
  if (state.marked.far) marked.push(SIDES.far)
  return {
    ...frameAt({ scenario, result: null, traces, rows: 1 }, state.time),
    supported: state.supported,
    fallen: state.lost === null ? null : state.time - state.lost,
    crack: state.crack && SIDES[state.crack],
    marked,
    arm: armAt([...state.moves], state.time),
    unstable: state.left !== '',
  }
}
