/** What the study in hand answers, as far as it has come. */
import { useDeferredValue, useMemo } from 'react'
import { answerOf, type Scenario, type SpreadAnswer, type SpreadStudy } from '../../../sim/index.ts'
import { useNominal } from '../../store/lent.ts'
import { useSpread } from '../../store/spread.ts'

export interface Answers {
  study: SpreadStudy
  /** One for each strategy that has gripped something. */
  answers: SpreadAnswer[]
  /** Changes whenever more has been counted. */
  told: number
}

/** Null: there is no study. What is drawn may lag: the page answers hands first, and draws in pieces. */
export function useAnswers(): Answers | null {
  const study = useSpread((state) => state.study)
  const tallies = useSpread((state) => state.tallies)
  const told = useDeferredValue(useSpread((state) => state.told))
  // Tallies grow in place; `told` says when.
  return useMemo(() => {
    if (!study) return null
    const begun = tallies.filter(({ batches }) => batches.size > 0)
    return { study, told, answers: begun.map((tally) => answerOf(study.scenario, study.sampling, tally)) }
  }, [study, tallies, told])
}

/** The same, where it is of what is on the bench; null where it is not. */
export function useAnswersAtHand(): Answers | null {
  const nominal = useNominal()
  const found = useAnswers()
  const same = useMemo(() => found !== null && gripAlike(found.study.scenario, nominal), [found?.study, nominal])
  return same ? found : null
}

/** Whether two scenarios grip the same: name and notes do not matter. */
export const gripAlike = (a: Scenario, b: Scenario) =>
  a === b || JSON.stringify({ ...a, name: '', notes: '' }) === JSON.stringify({ ...b, name: '', notes: '' })
