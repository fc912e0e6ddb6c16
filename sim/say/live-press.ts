/** What is said of a press that runs on. */
import type { LiveState } from '../job/live.ts'
import { seatDepth } from '../job/press/fill.ts'
import type { Scenario } from '../scenario/index.ts'
import type { At, LiveWords } from './live.ts'
import type { Wording } from './wording.ts'

/** Travel below which the ram counts as back [m], and speed below which it stands [m/s]. */
const BACK = 1e-4
const STANDING = 1e-4

export const pressLiveWords: LiveWords = {
  groups: { output: 'Ram', work: 'Joint' },
  acts: {
    press: { label: 'Press', mark: 'press' },
    drawBack: { label: 'Draw back', mark: 'draw back', title: 'The bushing stays where it is.' },
    newJoint: {
      label: 'New joint',
      mark: 'new joint',
      title: 'A new bushing on a new bore; the ram has to be out of their way.',
    },
  },
  events: {
    touch: 'touches',
    seat: 'seats',
    below: 'below the band',
    above: 'above the band',
    over: 'over the limit',
  },
  drive,
  work,
  effort: {
    label: 'Force of the ram',
    mean: 'Mean over the last half second.',
    peak: 'Highest since the ram last set out.',
  },
  below: 'short below',
  above: () => 'forced above',
}

function drive({ phase, engaged, facts }: LiveState, at: At): string {
  const back = at('travel') <= BACK
  switch (phase) {
    case 'returning':
      return back ? 'The ram stands back.' : 'Drawing back.'
    case 'holding':
      return back ? 'The ram stands back.' : 'The ram is kept where it stands.'
    case 'working':
      if (facts.free) return 'The ram is on its way.'
      return engaged && Math.abs(at('speed')) < STANDING ? 'The ram presses and stands still.' : 'Pressing.'
  }
}

function work({ events, phase, facts, engaged }: LiveState, at: At, scenario: Scenario, words: Wording): string {
  if (events.touch == null) return 'The bushing waits on its bore.'
  const depth = words.length(Math.max(0, at('depth')))
  const forced = events.over == null ? '' : ' It has been forced over its limit.'
  if (events.seat != null) return `The bushing sits on its shoulder at ${depth}.${forced}`
  const seat = seatDepth(scenario)
  const stuck = phase === 'working' && engaged && !facts.free && Math.abs(at('speed')) < STANDING
  if (stuck && at('depth') < seat) return `The bushing is jammed at ${depth} of ${words.length(seat)}.${forced}`
  return `The bushing is ${depth} deep.${forced}`
}
