/** What a candidate of the search for gains misses. */
import type { Miss } from '../ask/tune-judge.ts'
import { effortIn, jobWords } from './jobs.ts'
import { degrees, figure, type Wording } from './wording.ts'

/** In a few words, the same for all that miss the like. */
export function missWords(miss: Miss): string {
  switch (miss.kind) {
    case 'range':
      return 'a gain is out of range'
    case 'unstable':
      return 'a loop is unstable'
    case 'part':
      return `${miss.part} ${jobWords(miss).loops.gives} ${miss.verdict}`
    case 'force':
      return `${miss.part} ${jobWords(miss).loops.gives} ${jobWords(miss).study.acted} too weakly`
    case 'time':
      return `${miss.part} ${jobWords(miss).loops.gives} ${jobWords(miss).study.acted} too late`
    case 'spare':
      return `margin of the ${miss.part} ${jobWords(miss).loops.gives}`
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
      return `${missWords(miss)}, with ${effortIn(miss, words)(miss.value)} where at least ${effortIn(miss, words)(miss.wanted)} are wanted`
    case 'time':
      return `${missWords(miss)}, ${miss.value === null ? `the ${jobWords(miss).study.effort} does not settle` : `after ${words.shortTime(miss.value)}`}`
    case 'spare':
      return `${missWords(miss)} ${words.ratio(miss.value)}`
    default:
      return missWords(miss)
  }
}
