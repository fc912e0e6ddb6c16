/** A study of many parts: which one, how far it is, and what has been counted. It goes on while other views are open. */
import { create } from 'zustand'
import {
  BATCH,
  batchesOf,
  checkScenario,
  count,
  emptyTally,
  jobOf,
  type Scenario,
  type SpreadStudy,
  type StrategyId,
  strategiesOn,
  type Tally,
  type TallyText,
  tallyFrom,
  tallyText,
} from '../../sim/index.ts'
import { crew } from '../worker/crew.ts'

const KEY = 'jawbench.spread'

/** Batches are counted at most so often [ms] before the page is told, and kept in the browser at most so often. */
const TELL = 500
const KEEP = 5000
/** The first batches of each strategy are told at once. */
const PROMPT = 2

export interface SpreadState {
  study: SpreadStudy | null
  tallies: Tally[]
  status: 'idle' | 'running' | 'paused' | 'done' | 'failed'
  message: string
  /** Changes whenever more has been counted. */
  told: number
  /** When the workers were started [ms], and how many batches were in then. */
  since: number
  before: number
  /** Begins anew. */
  run(scenario: Scenario, grips: number, seed: number): void
  /** Goes on where it was paused, or with so many more parts. */
  goOn(more?: number): void
  pause(): void
  clear(): void
}

/** Batches in, and of how many. */
export const doneOf = ({ tallies }: Pick<SpreadState, 'tallies'>) =>
  tallies.reduce((sum, { batches }) => sum + batches.size, 0)
export const allOf = ({ study }: Pick<SpreadState, 'study'>) =>
  study ? batchesOf(study.grips) * study.strategies.length : 0

/** A study grows by whole batches, so that none has to be gripped anew. */
const wholeBatches = (grips: number) => Math.ceil(grips / BATCH) * BATCH

const missing = (study: SpreadStudy, tallies: Tally[]) =>
  Array.from({ length: batchesOf(study.grips) }, (_, batch) => batch).flatMap((batch) =>
    tallies.flatMap(({ strategy, batches }) => (batches.has(batch) ? [] : [{ batch, strategy }])),
  )

export const useSpread = create<SpreadState>()((set, get) => {
  /** Counts the starts and ends: what was begun before the last of them is no longer listened to. */
  let turn = 0
  let telling = 0
  let kept = 0

  const tell = () => {
    telling = 0
    set({ told: get().told + 1 })
    if (performance.now() - kept > KEEP) keepNow()
  }
  const keepNow = () => {
    kept = performance.now()
    keep(get())
  }
  const end = (status: 'done' | 'paused' | 'failed', message = '') => {
    turn++
    clearTimeout(telling)
    telling = 0
    set({ status, message, told: get().told + 1 })
    keepNow()
  }

  const start = () => {
    const { study, tallies } = get()
    if (!study) return
    const items = missing(study, tallies)
    set({ status: 'running', message: '', since: performance.now(), before: doneOf({ tallies }) })
    if (items.length === 0) return end('done')
    const own = ++turn
    const prompt = doneOf({ tallies }) + PROMPT * tallies.length
    crew
      .work('spread', study, items, (batch) => {
        if (own !== turn) return false
        count(tallies.find(({ strategy }) => strategy === batch.strategy)!, batch)
        telling ||= window.setTimeout(tell, doneOf({ tallies }) <= prompt ? 0 : TELL)
        return true
      })
      .then(
        () => own === turn && end('done'),
        (error: Error) => own === turn && end('failed', error.message),
      )
  }

  return {
    ...restored(),
    message: '',
    told: 0,
    since: 0,
    before: 0,

    run(scenario, grips, seed) {
      const strategies = strategiesOn(jobOf(scenario)).map(({ id }) => id as StrategyId)
      const tallies = strategies.map((id) => emptyTally(scenario.job, id, scenario.spread.varies.length))
      set({ study: { scenario, strategies, grips: wholeBatches(grips), seed, sampling: 'sobol' }, tallies })
      start()
    },
    goOn(more = 0) {
      const { study } = get()
      if (!study) return
      set({ study: { ...study, grips: study.grips + wholeBatches(more) } })
      start()
    },
    pause: () => end('paused'),
    clear() {
      turn++
      set({ study: null, tallies: [], status: 'idle', message: '', told: get().told + 1 })
      forget()
    },
  }
})

interface Kept {
  study: SpreadStudy
  tallies: TallyText[]
}

/** Storage may be refused or full; the study is then lost with the page. */
function keep({ study, tallies }: SpreadState): void {
  if (!study) return
  try {
    localStorage.setItem(KEY, JSON.stringify({ study, tallies: tallies.map(tallyText) } satisfies Kept))
  } catch {
    forget()
  }
}

function forget(): void {
  try {
    localStorage.removeItem(KEY)
  } catch {
    // Nothing was kept.
  }
}

/** What was kept before the page was left; what cannot be read is let go. */
function restored(): Pick<SpreadState, 'study' | 'tallies' | 'status'> {
  try {
    const { study, tallies } = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Kept
    if (!checkScenario(study.scenario).ok) throw new RangeError('a scenario of another version')
    const back = tallies.map((tally) => tallyFrom(study.scenario.job, tally))
    const whole = missing(study, back).length === 0
    const status = whole ? 'done' : 'paused'
    return { study, tallies: back, status }
  } catch {
    return { study: null, tallies: [], status: 'idle' }
  }
}
