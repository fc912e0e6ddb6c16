/** What is said of a web that runs on. */
import type { LiveState } from '../job/live.ts'
import { tensionWindow } from '../job/web/window.ts'
import type { Scenario } from '../scenario/index.ts'
import type { At, LiveWords } from './live.ts'
import type { Wording } from './wording.ts'

export const webLiveWords: LiveWords = {
  groups: { output: 'Roll', line: 'Line', work: 'Web' },
  acts: {
    pull: { label: 'Pull taut', mark: 'pull taut', title: 'From the slack that hangs, which the drive is told.' },
    slacken: {
      label: 'Slacken',
      mark: 'slacken',
      title: 'Lets out as much as hung at first, and keeps pace with the line.',
    },
    run: { label: 'Run', mark: 'line runs', title: 'To the highest speed of the file, by its first ramp.' },
    halt: { label: 'Stop', mark: 'line stops', title: 'By the first ramp of the file.' },
    newWeb: {
      label: 'New web',
      mark: 'new web',
      title: 'Threaded anew on a roll as at the start; the line has to stand.',
    },
  },
  events: { taut: 'taut', slack: 'goes slack', over: 'over the most', torn: 'tears' },
  drive,
  work,
  effort: {
    label: 'Tension',
    mean: 'Mean at the gauge roll over the last half second.',
    peak: 'Highest at gauge roll or roll since the roll last set out.',
  },
  below: 'slack below',
  above: () => 'stretched above',
}

function drive({ phase, engaged, facts }: LiveState): string {
  switch (phase) {
    case 'returning':
      return facts.hangs ? keeps(facts) : 'Letting out.'
    case 'holding':
      return keeps(facts)
    case 'working':
      return engaged ? 'Pulling.' : 'Taking up the slack.'
  }
}

const keeps = ({ runs }: LiveState['facts']) => (runs ? 'The roll keeps pace with the line.' : 'The roll stands.')

function work({ events, facts }: LiveState, at: At, scenario: Scenario, words: Wording): string {
  const line = facts.runs ? `the line runs at ${words.speed(at('lineSpeed'))}` : 'the line stands'
  if (events.torn != null) return `The web has torn; ${line}.`
  if (facts.hangs) return `The web hangs slack by ${words.length(at('slack'))}; ${line}.`
  const { least, most } = tensionWindow(scenario)
  const tension = at('tension')
  const how = tension < least ? 'has less than the least tension' : tension > most ? 'is stretched' : 'is taut'
  return `The web ${how}; ${line}.`
}
