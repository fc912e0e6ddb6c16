/** What a candidate of the search for gains misses. */
import type { Miss } from '../ask/tune-judge.ts'
import { degrees, figure, type Wording } from './wording.ts'

/** In a few words, the same for all that miss the like. */
export function missWords(miss: Miss): string {
  switch (miss.kind) {
    case 'range':
      return 'a gain is out of range'
    case 'unstable':
      return 'a loop is unstable'
    case 'part':
      return `${miss.part} part ${miss.verdict}`
    case 'force':
      return `${miss.part} part gripped too weakly`
    case 'grip time':
      return `${miss.part} part gripped too late`
    case 'hold margin':
      return `hold margin of the ${miss.part} part`
    default:
      return miss.kind
  }
}

/** With its figure. */
export function missWhy(miss: Miss, words: Wording): string {
  switch (miss.kind) {
    case 'range':
      return `${miss.path} is out of range`
    case 'phase margin':
      return `${miss.kind} ${degrees(miss.value)}`
    case 'peak sensitivity':
      return `${miss.kind} ${figure(miss.value)}`
    case 'force':
      return `${missWords(miss)}, with ${words.force(miss.value)} where at least ${words.force(miss.wanted)} are wanted`
    case 'grip time':
      return `${missWords(miss)}, ${miss.value === null ? 'the force does not settle' : `after ${words.shortTime(miss.value)}`}`
    case 'hold margin':
      return `${missWords(miss)} ${words.ratio(miss.value)}`
    default:
      return missWords(miss)
  }
}
