/** What a candidate of the search for gains misses. */
import type { Miss } from '../ask/tune.ts'
import { degrees, figure } from './wording.ts'

/** In a few words, the same for all that miss the like. */
export function missWords(miss: Miss): string {
  switch (miss.kind) {
    case 'range':
      return 'a gain is out of range'
    case 'unstable':
      return 'a loop is unstable'
    case 'part':
      return `${miss.part} part ${miss.verdict}`
    default:
      return miss.kind
  }
}

/** With its figure. */
export function missWhy(miss: Miss): string {
  switch (miss.kind) {
    case 'range':
      return `${miss.path} is out of range`
    case 'phase margin':
      return `${miss.kind} ${degrees(miss.value)}`
    case 'peak sensitivity':
      return `${miss.kind} ${figure(miss.value)}`
    default:
      return missWords(miss)
  }
}
