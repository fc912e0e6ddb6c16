import {
  allowedForce,
  forceWindow,
  type JobId,
  jobOf,
  neededForce,
  type Scenario,
  stiffWords,
  tensionLines,
  torqueLines,
  windowLines,
  wordingOf,
} from '../../../sim/index.ts'
import { formatFigure } from '../../ui/format.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'

export interface WindowWords {
  title: string
  sentence: string
  /** The window's edges in a few words. */
  span: string
  /** No effort does the work and spares what it works on. */
  empty: boolean
}

type Words = (scenario: Scenario, units: UnitSystem) => WindowWords

/** What each job's effort is held against. */
const WORDS: Record<JobId, Words> = { grip: gripWindow, press: pressWindow, cap: capWindow, web: webWindow }

/** In the units of the page. */
export const windowWords: Words = (scenario, units) => WORDS[scenario.job](scenario, units)

function pressWindow(scenario: Scenario, units: UnitSystem): WindowWords {
  const words = wordingOf(units)
  const [least, most] = [neededForce(scenario), allowedForce(scenario)]
  const span =
    most < Number.POSITIVE_INFINITY ? `${words.force(least)} to ${words.force(most)}` : `from ${words.force(least)}`
  if (least >= most)
    return {
      title: 'No force both seats this bushing and spares the joint:',
      sentence: `the end of the way takes ${words.force(least)}, where ${words.force(most)} are allowed.`,
      span: 'empty',
      empty: true,
    }
  return { title: 'Joint window', sentence: `${windowLines(scenario, words).join('; ')}.`, span, empty: false }
}

function capWindow(scenario: Scenario, units: UnitSystem): WindowWords {
  const words = wordingOf(units)
  const torque = (value: number) => words.of({ unit: 'N·m' }, value)
  const { least, most } = jobOf(scenario).study.window(scenario)
  const empty = least !== null && most !== null && least >= most
  return {
    title: empty ? 'No torque both tightens this closure and spares it:' : 'Torque window',
    sentence: `${torqueLines(scenario, words).join('; ')}.`,
    span: empty ? 'empty' : most === null ? `from ${torque(least ?? 0)}` : `${torque(least ?? 0)} to ${torque(most)}`,
    empty,
  }
}

function webWindow(scenario: Scenario, units: UnitSystem): WindowWords {
  const words = wordingOf(units)
  const { least, most } = jobOf(scenario).study.window(scenario)
  const empty = least !== null && most !== null && least >= most
  return {
    title: empty ? 'The web tears before it has the tension that is wanted:' : 'Tension window',
    sentence: `${tensionLines(scenario, words).join('; ')}.`,
    span: empty ? 'empty' : `${words.force(least ?? 0)} to ${words.force(most ?? 0)}`,
    empty,
  }
}

function gripWindow(scenario: Scenario, units: UnitSystem): WindowWords {
  const { symbol, toShown } = quantityUnit('force', units)
  const { least, most, yields, leastStiff } = forceWindow(scenario)
  const force = (value: number) => `${formatFigure(toShown(value))} ${symbol}`
  const stiff = yields ? ` ${stiffWords(leastStiff === null ? null : force(leastStiff))}` : ''
  if (least !== null && most !== null && least >= most)
    return {
      title: 'No grip force both holds and spares this part:',
      sentence: `holding needs at least ${force(least)}, the part takes at most ${force(most)}.${stiff}`,
      span: 'empty',
      empty: true,
    }
  const words = open(least && force(least), most && force(most))
  return { title: 'Force window', empty: false, ...words, sentence: words.sentence + stiff }
}

function open(least: string | 0 | null, most: string | 0 | null): Pick<WindowWords, 'sentence' | 'span'> {
  if (least && most)
    return {
      span: `${least} to ${most}`,
      sentence: `${least} to ${most} at each contact: less drops the part, more damages it.`,
    }
  if (least)
    return {
      span: `from ${least}`,
      sentence: `from ${least} at each contact: less drops the part; it has no damage limit.`,
    }
  if (most)
    return {
      span: `up to ${most}`,
      sentence: `up to ${most} at each contact: nothing pulls on the part, more damages it.`,
    }
  return { span: 'open', sentence: 'is open: nothing pulls on the part, and it has no damage limit.' }
}
