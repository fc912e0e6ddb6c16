/** What is asked of every grip, figure by figure. */
import { boundsOf } from './bounds.ts'
import { FIGURES } from './figures.ts'

export const requirements = boundsOf(FIGURES)
