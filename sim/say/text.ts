/** Texts that stand beside what they describe hold their quantities as `{0.0001 m/s|mm/s}`: SI value, its unit, the unit it is read in. */
import type { Wording } from './wording.ts'

const QUANTITY = /\{(-?[\d.e-]+) ([^|{}]+)(?:\|([^{}]+))?\}/g

export const textIn = (text: string, words: Wording): string =>
  text.replace(QUANTITY, (_, value: string, unit: string, shown?: string) =>
    words.of(shown ? { unit, shown } : { unit }, Number(value)),
  )
