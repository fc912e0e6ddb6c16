/** What is said of a closing head that runs on. */
import type { LiveState } from '../job/live.ts'
import type { Scenario } from '../scenario/index.ts'
import type { At, LiveWords } from './live.ts'
import type { Wording } from './wording.ts'

/** Angle below which the head counts as back [rad]. */
const BACK = 0.01

export const capLiveWords: LiveWords = {
  groups: { output: 'Head', work: 'Jar' },
  acts: {
    tighten: { label: 'Tighten', mark: 'tighten' },
    turnBack: {
      label: 'Turn back',
      mark: 'turn back',
      title: 'The chuck holds on: the torque shows what takes the closure off.',
    },
    letGo: { label: 'Let go', mark: 'let go', title: 'The chuck opens and the head turns back; the closure stays.' },
    newJar: {
      label: 'New jar',
      mark: 'new jar',
      title: 'A new jar with its closure in the chuck; the head has to be back before the thread begins.',
    },
  },
  events: { start: 'on the thread', touch: 'meets the liner', jam: 'jams', over: 'over its torque', strip: 'strips' },
  drive,
  work,
  effort: {
    label: 'Torque of the chuck',
    mean: 'Mean over the last half second.',
    peak: 'Highest since the head last set out.',
  },
  below: 'loose below',
  above: () => 'too tight above',
}

function drive({ phase, engaged }: LiveState, at: At): string {
  const back = at('travel') <= BACK
  switch (phase) {
    case 'returning':
      return back ? 'The head is back.' : 'Turning back.'
    case 'holding':
      return back ? 'The head is back.' : 'The head is kept where it stands.'
    case 'working':
      return engaged ? 'Tightening.' : 'Turning on.'
  }
}

function work({ events, facts }: LiveState, at: At, _scenario: Scenario, words: Wording): string {
  const chuck = facts.held ? '' : ' The chuck has let go of it.'
  if (events.strip != null) return `The thread of the closure has stripped.${chuck}`
  if (events.jam != null) return `The closure is jammed on the wrong turn of its thread.${chuck}`
  if (events.start == null) return 'The closure is not on its thread yet.'
  if (!facts.onThread) return `The closure is off its thread again.${chuck}`
  const preload = at('preload')
  const tight = preload > 0 ? `presses its liner with ${words.force(preload)}` : 'is on its thread, short of the liner'
  const over = events.over == null ? '' : ' It has had more than its most torque.'
  return `The closure ${tight}.${over}${chuck}`
}
