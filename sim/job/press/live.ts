/** What can be done by hand to a bushing on its bore, and what happens to it. */
import type { JobLive } from '../live.ts'
import type { PressLoad } from './load.ts'
import { pressIn } from './scenario.ts'

const known = (time: number) => !Number.isNaN(time)

export const pressLive: JobLive<PressLoad> = {
  groups: [
    {
      id: 'output',
      acts: [
        { id: 'press', kind: 'out' },
        // The bushing stays where it is.
        { id: 'drawBack', kind: 'back' },
      ],
    },
    {
      id: 'work',
      acts: [
        {
          id: 'newJoint',
          kind: 'fresh',
          can: ({ load, travel }) => known(load.state.contactTime) && travel <= load.gap,
        },
      ],
    },
  ],
  before: 'drawBack',
  events: [
    { id: 'touch', damage: false, at: ({ state }) => state.contactTime },
    { id: 'seat', damage: false, at: ({ state }) => state.seatTime },
    { id: 'below', damage: false, at: ({ band }) => band.state.belowTime },
    { id: 'above', damage: true, at: ({ band }) => band.state.aboveTime },
    { id: 'over', damage: true, at: ({ state }) => state.over },
  ],
  facts: { free: ({ state }) => state.force === 0 },
  inHand: ({ state }) => known(state.contactTime),
  fixed: (scenario) => {
    const { bushing, bore, ram } = pressIn(scenario)
    const { diameter, length, chamfer } = bushing
    return [diameter, length, chamfer.angle, chamfer.length, bore.shoulder?.depth ?? null, ram.gap, ram.stroke]
  },
  still() {},
}
