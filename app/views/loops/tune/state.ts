/** The search under way or done last; it goes on while other views are open. */
import { create } from 'zustand'
import {
  bestOf,
  type Scenario,
  STIFFNESS_SPREAD,
  STRATEGIES,
  type TuneCandidate,
  type TuneOptions,
  type TuneProgress,
} from '../../../../sim/index.ts'
import { startStudy } from '../../../worker/study.ts'

/** One search: what was asked, of which scenario, and what has come of it. */
export interface Search {
  scenario: Scenario
  options: TuneOptions
  status: 'running' | 'done' | 'stopped' | 'failed'
  message: string
  candidates: TuneCandidate[]
  /** The gains that were on the bench; null until the first answer. */
  present: TuneCandidate | null
  of: number
}

interface TuneState {
  options: TuneOptions
  search: Search | null
  /** The candidate that the person has picked; null: the best. */
  picked: TuneCandidate | null
}

export const useTune = create<TuneState>()(() => ({
  options: {
    strategy: STRATEGIES.find(({ sensed }) => sensed)!.id,
    objective: 'time',
    phaseMargin: 45,
    peakSensitivity: 2,
    spread: STIFFNESS_SPREAD,
  },
  search: null,
  picked: null,
}))

export const setOptions = (change: Partial<TuneOptions>) =>
  useTune.setState(({ options }) => ({ options: { ...options, ...change } }))

let halt = () => {}

export function startTune(scenario: Scenario) {
  halt()
  const { options } = useTune.getState()
  const search: Search = {
    scenario,
    options,
    status: 'running',
    message: '',
    candidates: [],
    present: null,
    of: 0,
  }
  useTune.setState({ search, picked: null })
  const found: TuneCandidate[] = []
  halt = startStudy(
    'tune',
    { scenario, options },
    {
      item({ candidate, present, of }: TuneProgress) {
        found.push(candidate)
        change({ candidates: [...found], present, of })
      },
      done: () => change({ status: 'done' }),
      failed: (message) => change({ status: 'failed', message }),
    },
  )
}

export function stopTune() {
  halt()
  change({ status: 'stopped' })
}

const change = (some: Partial<Search>) =>
  useTune.setState(({ search }) => ({ search: search && { ...search, ...some } }))

export const pick = (picked: TuneCandidate) => useTune.setState({ picked })

/** The candidate whose gains and figures are shown. */
export const shownPick = ({ search, picked }: TuneState): TuneCandidate | null =>
  picked ?? (search ? bestOf(search.candidates, search.options.objective) : null)
