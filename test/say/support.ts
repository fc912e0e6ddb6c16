/** Sentences as the command line prints them. */
import {
  frictionNote,
  type GripResult,
  inPlainSpaces,
  type LoopAnalysis,
  type LoopsResult,
  loopNote,
  reasonOf,
  type Scenario,
  type StrategyId,
  type Why,
  whySentence,
  wordingOf,
} from '../../sim/index.ts'

export const SI = wordingOf('si')

export const reasonIn = (scenario: Scenario, result: GripResult): string =>
  inPlainSpaces(reasonOf(scenario, result, SI))

export const whyIn = (scenario: Scenario, strategy: StrategyId, why: Why): string =>
  inPlainSpaces(whySentence(scenario, strategy, why, SI))

export const noteIn = (analysis: LoopAnalysis): string => inPlainSpaces(loopNote(analysis, SI))

export const frictionIn = ({ friction }: LoopsResult): string => inPlainSpaces(frictionNote(friction, SI))
