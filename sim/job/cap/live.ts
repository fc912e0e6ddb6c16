/** What can be done by hand to a closure on its jar, and what happens to it. */
import type { JobLive } from '../live.ts'
import type { CapLoad } from './load.ts'
import { capIn } from './scenario.ts'

const used = ({ state }: CapLoad) => !Number.isNaN(state.startTime) || state.held === 0

export const capLive: JobLive<CapLoad> = {
  groups: [
    {
      id: 'output',
      acts: [
        { id: 'tighten', kind: 'out', can: ({ load }) => load.state.held > 0 },
        // The chuck holds on, so that it shows what takes the closure off again.
        { id: 'turnBack', kind: 'back', can: ({ load }) => load.state.held > 0 },
        { id: 'letGo', kind: 'back', can: ({ load }) => load.state.held > 0, act: ({ load }) => load.release() },
      ],
    },
    {
      id: 'work',
      acts: [
        {
          id: 'newJar',
          kind: 'fresh',
          can: ({ load, travel, scenario }) => used(load) && travel < capIn(scenario).chuck.startAngle,
          // The chuck takes the closure as it stands itself.
          act({ load, travel }) {
            load.state.angle = travel
            load.state.head = travel
          },
        },
      ],
    },
  ],
  before: 'turnBack',
  events: [
    { id: 'start', damage: false, at: ({ state }) => state.startTime },
    { id: 'touch', damage: false, at: ({ state }) => state.contactTime },
    { id: 'jam', damage: true, at: ({ state }) => state.jamTime },
    { id: 'over', damage: true, at: ({ state }) => state.over },
    { id: 'strip', damage: true, at: ({ state }) => state.stripTime },
  ],
  facts: {
    held: ({ state }) => state.held > 0,
    // A closure that is off its thread turns along with the chuck.
    onThread: ({ state, thread }) => state.angle >= thread.start,
  },
  inHand: ({ state }) => state.held > 0 && !Number.isNaN(state.startTime),
  fixed: (scenario) => {
    const { closure, chuck } = capIn(scenario)
    const { lead, meanDiameter, engagement, misstart } = closure
    return [lead, meanDiameter, engagement, misstart?.after ?? null, chuck.startAngle]
  },
  still() {},
}
