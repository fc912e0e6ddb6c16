/** What a section of the model page is made of. Knows no React. */
import type { Scenario } from '../../../sim/index.ts'

export interface Block {
  kind: 'equation' | 'text'
  /** MathML, or a sentence with MathML in it: the build puts it in place of the TeX (.tools/tex.ts). */
  html: string
}

/** An equation in TeX; symbols are spelled as in the schema, `R_wh`. */
export const tex = ({ raw }: TemplateStringsArray): Block => ({ kind: 'equation', html: raw[0]! })

/** A paragraph with formulas between $. */
export const say = ({ raw }: TemplateStringsArray): Block => ({ kind: 'text', html: raw[0]! })

/** A symbol that no key of a scenario stands for. */
export interface OwnSymbol {
  symbol: string
  title: string
  /** SI */
  unit: string
  shown?: string
  /** For the scenario on the bench; left out where it changes during a run. */
  value?(scenario: Scenario): number | null
}

export interface Section {
  id: string
  title: string
  blocks: Block[]
  /** Keys of the scenario, whose symbol, title and unit come from the schema. */
  quantities: string[]
  own: OwnSymbol[]
  /** Ids of figures that no scenario sets. */
  fixed: string[]
  /** Ids of sources. */
  sources: string[]
}
