/** What can be done by hand to a part between two jaws, and what happens to it. */
import type { ArmMove } from '../../scenario/index.ts'
import type { JobLive, LiveAct, LiveHands } from '../live.ts'
import { travelToContact } from './geometry.ts'
import type { GripLoad } from './load.ts'

type Hands = LiveHands<GripLoad>

const supported = ({ state }: GripLoad) => state.hanging === 0 && state.out === 0

/** The support goes: what nothing grips stays behind. */
function lift({ load, arm, time }: Hands): void {
  if (!supported(load)) return
  arm.at(time) // what pulls from now on, in the plant of this very moment
  load.lift(time, arm)
}

/** An arm that moves leaves the support behind. */
const shake = (axis: ArmMove['axis']): LiveAct<GripLoad> => ({
  id: axis,
  kind: 'work',
  can: ({ shaken }) => !shaken,
  act: lift,
  shake: axis,
})

const used = (load: GripLoad) => !supported(load) || load.state.peak > 0

export const gripLive: JobLive<GripLoad> = {
  groups: [
    {
      id: 'output',
      acts: [
        { id: 'close', kind: 'out' },
        // A part that hangs in the jaws is set down on its support first, as at a release.
        { id: 'open', kind: 'back', act: ({ load }) => load.release() },
      ],
    },
    {
      id: 'work',
      acts: [
        { id: 'lift', kind: 'work', can: ({ load }) => supported(load), act: lift },
        {
          id: 'newPart',
          kind: 'fresh',
          can: ({ load, travel, scenario }) => used(load) && travel <= travelToContact(scenario),
        },
      ],
    },
    { id: 'shake', acts: [shake('along'), shake('across'), shake('up')] },
  ],
  before: 'open',
  events: [
    { id: 'crack', damage: true, at: ({ state }) => state.crackTime },
    { id: 'lost', damage: false, at: ({ state }) => state.lost },
  ],
  facts: {
    supported,
    crackedFar: ({ state }) => state.crackFar > 0,
    nearMarked: ({ state }) => state.nearMarked > 0,
    farMarked: ({ state }) => state.farMarked > 0,
  },
  inHand: ({ state }) => Number.isNaN(state.lost),
  fixed: ({ part, jaws }) => [part.width, jaws.opening, jaws.stroke, jaws.layout],
  still(load) {
    load.liftTime = Number.POSITIVE_INFINITY
  },
}
