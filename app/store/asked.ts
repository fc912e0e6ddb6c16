/** What is asked beside a study itself, of one strategy or of all, on a press. Answers stay while other views are open. */
import { create, type StoreApi, type UseBoundStore } from 'zustand'
import type { StrategyId } from '../../sim/index.ts'

/** Who may be asked about. */
export type Subject = StrategyId | 'all'

export interface Asked<Q, A, S extends Subject = StrategyId> {
  /** What the answers are about, by identity. */
  about: unknown
  /** As far as they have grown. */
  answers: Partial<Record<S, A>>
  /** Whose answer is shown. */
  chosen: S | null
  /** Who is being asked about. */
  asking: S | null
  /** Why there is no answer. */
  message: string
  choose(subject: S): void
  /** Begins anew; what was being asked before is let go, and what was answered about another thing. */
  ask(question: Q, subject: S, about: unknown): void
  stop(): void
}

export type AskedStore<Q, A, S extends Subject = StrategyId> = UseBoundStore<StoreApi<Asked<Q, A, S>>>

/** `tell` hears of the answer as it grows and returns whether to go on; an answer that is stopped may reject. */
type Answering<Q, A, S extends Subject> = (question: Q, subject: S, tell: (answer: A) => boolean) => Promise<void>

export const askedOf = <Q, A, S extends Subject = StrategyId>(answer: Answering<Q, A, S>): AskedStore<Q, A, S> =>
  create<Asked<Q, A, S>>()((set, get) => {
    /** Counts what was asked and stopped: only the last is listened to. */
    let turn = 0
    const end = (message = '') => {
      turn++
      set({ asking: null, message })
    }
    return {
      about: null,
      answers: {},
      chosen: null,
      asking: null,
      message: '',
      choose: (chosen) => set({ chosen }),
      ask(question, subject, about) {
        const own = ++turn
        const before = get()
        const answers = { ...(before.about === about && before.answers), [subject]: undefined }
        set({ about, answers, asking: subject, message: '' })
        const tell = (told: A) => {
          if (own !== turn) return false
          set({ answers: { ...get().answers, [subject]: told } })
          return true
        }
        answer(question, subject, tell).then(
          () => own === turn && end(),
          (error: Error) => own === turn && end(error.message),
        )
      },
      stop: () => end(),
    }
  })
