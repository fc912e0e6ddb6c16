/** What is said of a grip that runs on. */
import type { LiveState } from '../job/live.ts'
import type { At, LiveWords } from './live.ts'
import { damageWord } from './window.ts'

/** Travel below which the jaws count as open [m]. */
const OPEN = 1e-4

const SUPPORT = 'the support goes first.'

export const gripLiveWords: LiveWords = {
  groups: { output: 'Jaws', work: 'Part', shake: 'Shake the arm' },
  acts: {
    close: { label: 'Close', mark: 'close' },
    open: { label: 'Open', mark: 'open' },
    lift: { label: 'Lift', mark: 'lift', title: 'Takes the support away: what nothing grips stays behind.' },
    newPart: {
      label: 'New part',
      mark: 'new part',
      title: 'A new part on its support; there has to be room for it between the jaws.',
    },
    along: { label: 'along the grip', mark: 'shake', title: SUPPORT },
    across: { label: 'across it', mark: 'shake', title: SUPPORT },
    up: { label: 'up', mark: 'shake', title: SUPPORT },
  },
  events: { crack: 'breaks', lost: 'lost' },
  drive,
  work,
  effort: {
    label: 'Grip force',
    mean: 'Mean of the contacts over the last half second.',
    peak: 'Highest at either contact since the jaws last set out.',
  },
  below: 'drops below',
  above: (scenario) => `${damageWord(scenario)} above`,
}

function drive({ phase, engaged }: LiveState, at: At): string {
  const open = at('travel') <= OPEN
  switch (phase) {
    case 'returning':
      return open ? 'Open.' : 'Opening.'
    case 'holding':
      return open ? 'Open.' : 'The jaws are kept where they stand.'
    case 'working':
      return engaged ? 'Gripping.' : 'Closing.'
  }
}

function work({ events, facts }: LiveState): string {
  const part = events.crack == null ? 'part' : 'broken part'
  if (events.lost != null) return `The ${part} is no longer in the jaws.`
  return `The ${part} ${facts.supported ? 'stands on its support' : 'hangs in the jaws'}.`
}
