import { type Section, say } from '../../section.ts'

export const CURRENT_CLAMP: Section[] = [
  {
    id: 'current-clamp',
    title: 'Current clamp',
    blocks: [
      say`The servo follows the profile into the part with its output limited to the lesser of $I_cl$ and $I_lim$, from the opening $w_cl$ on; wider open $I_lim$ holds. In contact the servo saturates and presses with that current, whatever the position.`,
    ],
    quantities: ['strategies.currentClamp.limit', 'strategies.currentClamp.from', 'servo.currentLimit'],
    own: [],
    fixed: [],
    sources: [],
  },
]
