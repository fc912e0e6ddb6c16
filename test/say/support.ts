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
  type Why,
  whySentence,
  wordingOf,
} from '../../sim/index.ts'

export const SI = wordingOf('si')

export const reasonIn = (scenario: Scenario, result: GripResult): string =>
  inPlainSpaces(reasonOf(scenario, result, SI))

export const whyIn = (scenario: Scenario, why: Why): string => inPlainSpaces(whySentence(scenario, why, SI))

export const noteIn = (analysis: LoopAnalysis): string => inPlainSpaces(loopNote(analysis, SI))

export const frictionIn = ({ friction }: LoopsResult): string => inPlainSpaces(frictionNote(friction, SI))

const METRIC =
  /[\d.]\s(?:[mkµ]?N|[mkµc]?m|k?g|°C|K|N\/s|N\/m|N\/mm|N\/µm|mm?\/s|m\/s²|m\/s³|m?N·m(?:\/A)?|N·s\/m|kg·m²|g·cm²)(?![\p{L}\d/·²³])/gu

/** Figures with an SI unit that US units replace. */
export const metricUnits = (text: string): string[] => text.match(METRIC) ?? []
