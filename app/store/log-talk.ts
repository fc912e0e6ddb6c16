/** The conversation with the worker that reads logs. */
import type { Scenario } from '../../sim/index.ts'
import { type LogWorker, logWorker } from '../worker/log.ts'
import type { LogAnswer } from '../worker/log-messages.ts'
import {
  type Asked,
  choicesOf,
  countedOf,
  fitStands,
  type LogState,
  NO_CHOICES,
  NO_FIT,
  NOTHING_SAID,
  type OpenLog,
  type RespondAbout,
  sameResponse,
  sourceOf,
} from './log-state.ts'
import { useScenario } from './scenario.ts'

const settings = () => useScenario.getState().logs

/** What is asked of the worker that reads logs, and what becomes of its answers. */
export class Talk {
  private ids = 0
  /** Counts questions: of fits and of layings only the last one's answer is taken. */
  private turns = 0
  private laying = 0
  private fitting = 0
  private responding: { turn: number; question: RespondAbout } | null = null
  private about = new Map<number, Asked>()
  private worker: LogWorker | null = null
  private readonly set: (next: Partial<LogState>) => void
  private readonly get: () => LogState

  constructor(set: (next: Partial<LogState>) => void, get: () => LogState) {
    this.set = set
    this.get = get
  }

  open(files: Iterable<File>) {
    for (const file of files) {
      const log = { id: ++this.ids, name: file.name, size: file.size, done: 0, told: null, sketches: [] }
      this.set({ logs: [...this.get().logs, { ...log, status: 'reading', asked: NO_CHOICES }] })
      this.ask({ kind: 'read', log: log.id, file })
    }
  }

  close(id: number) {
    this.ask({ kind: 'close', log: id })
    this.set({ logs: this.get().logs.filter((log) => log.id !== id) })
    if (this.get().responded?.about.log === id) this.set({ responded: null, unresponded: null })
  }

  respond(scenario: Scenario) {
    const source = sourceOf(this.get().logs, settings())
    if (!source) {
      this.responding = null
      return this.set({ responded: null, unresponded: null })
    }
    const { shown, said } = settings().response
    const { log, recording } = source
    const question = { scenario, log, recording, shown, said: said[log] ?? NOTHING_SAID, told: this.toldOf(log) }
    const { responded } = this.get()
    if (responded && sameResponse(responded.about, question) && fitStands(scenario, responded)) return
    this.responding = { turn: ++this.turns, question }
    this.ask({ kind: 'respond', turn: this.turns, question: { scenario, log, recording, shown, said: question.said } })
  }

  lay(scenario: Scenario) {
    if (countedOf(this.get().logs, settings()).length === 0) {
      this.laying = 0
      return this.set({ laid: null, unlaid: null })
    }
    const next = this.question(scenario)
    this.about.delete(this.laying)
    this.laying = next.turn
    this.ask({ kind: 'lay', ...next })
  }

  startFit(scenario: Scenario) {
    const next = this.question(scenario)
    this.about.delete(this.fitting)
    this.fitting = next.turn
    this.set({ fit: { ...NO_FIT, status: 'running' } })
    this.ask({ kind: 'fit', ...next })
  }

  stopFit() {
    this.fitting = 0
    this.ask({ kind: 'stop' })
    this.set({ fit: { ...this.get().fit, status: 'stopped' } })
  }

  /** Asks anew where a choice has changed since, be it by undo. */
  follow() {
    for (const { id, status, asked } of this.get().logs) {
      const wanted = choicesOf(settings(), id)
      if (status !== 'read' || asked === wanted) continue
      this.put(id, { asked: wanted })
      this.ask({ kind: 'understand', log: id, choices: wanted })
    }
  }

  private readonly ask: LogWorker['ask'] = (request) => {
    this.worker ??= logWorker(
      (answer) => this.hear(answer),
      () => this.lost(),
    )
    this.worker.ask(request)
  }

  private question(scenario: Scenario): { turn: number; question: Asked } {
    const { wish, choices } = settings()
    const asked = { scenario, recordings: countedOf(this.get().logs, settings()), wish, choices }
    this.about.set(++this.turns, asked)
    return { turn: this.turns, question: asked }
  }

  private take(turn: number): Asked {
    const asked = this.about.get(turn)!
    this.about.delete(turn)
    return asked
  }

  private put(id: number, next: Partial<OpenLog>) {
    this.set({ logs: this.get().logs.map((log) => (log.id === id ? { ...log, ...next } : log)) })
  }

  private toldOf(id: number) {
    return this.get().logs.find((log) => log.id === id)?.told
  }

  private hear(answer: LogAnswer) {
    switch (answer.kind) {
      case 'progress':
        return this.put(answer.log, { done: answer.done })
      case 'understood': {
        const { log, told, sketches } = answer
        // What makes no sense as it was said tells nothing of the columns: they stay as they were.
        const columns = told.columns.length > 0 ? told.columns : (this.toldOf(log)?.columns ?? [])
        this.put(log, { status: 'read', told: { ...told, columns }, ...(sketches && { sketches }) })
        return this.follow()
      }
      case 'unreadable':
        return this.put(answer.log, { status: 'unreadable' })
      case 'laid':
        if (answer.turn === this.laying)
          this.set({ laid: { ...answer.laid, about: this.take(answer.turn) }, unlaid: null })
        return
      case 'fitting':
        if (answer.turn === this.fitting) this.set({ fit: { ...this.get().fit, done: answer.done } })
        return
      case 'fitted': {
        if (answer.turn !== this.fitting) return
        const found = { ...answer.fit, about: this.take(answer.turn) }
        return this.set({ fit: { status: 'done', done: 1, found, why: null } })
      }
      case 'responded':
        if (answer.turn !== this.responding?.turn) return
        return this.set({ responded: { ...answer.responded, about: this.responding.question }, unresponded: null })
      case 'unfit':
        if (answer.turn === this.responding?.turn) this.set({ responded: null, unresponded: answer.why })
        if (answer.turn === this.laying) this.set({ laid: null, unlaid: answer.why })
        if (answer.turn === this.fitting) this.set({ fit: { ...NO_FIT, status: 'failed', why: answer.why } })
    }
  }

  private lost() {
    this.about = new Map()
    const unread = { status: 'unreadable', told: null } as const
    this.set({ logs: this.get().logs.map((log) => ({ ...log, ...unread })), laid: null, unlaid: null, fit: NO_FIT })
    this.set({ responded: null, unresponded: null })
  }
}
