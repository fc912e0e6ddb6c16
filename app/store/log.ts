/**
 * Measured logs that are open: how they are understood, how they lie over the model, and the fit. What a person says about them is part
 * of the history (`LogSettings`); the logs themselves stay in their worker until they are closed or the page is left, and nowhere else.
 */
import { create } from 'zustand'
import { type Choices, type ColumnChoice, jobOf, type Scenario } from '../../sim/index.ts'
import { type LogWorker, logWorker } from '../worker/log.ts'
import type {
  FitTold,
  Laid,
  LogAnswer,
  LogTold,
  RecordingOf,
  RespondedTold,
  ResponseQuestion,
  Unfit,
} from '../worker/log-messages.ts'
import { lentOf } from './lend.ts'
import { type LogSettings, type ResponseWish, useScenario } from './scenario.ts'

export interface OpenLog {
  id: number
  name: string
  /** Bytes. */
  size: number
  /** `unreadable`: the file could not be read, or its worker was lost. */
  status: 'reading' | 'read' | 'unreadable'
  /** Share that has been read. */
  done: number
  /** How it is understood; null until it has been read. While `asked` differs from `choices` another answer is on its way. */
  told: LogTold | null
  /** With which it was understood. */
  asked: Choices
  /** A small picture of each column, by its place. */
  sketches: Float64Array[]
}

/** What was laid over the model or fitted. */
export interface Asked {
  scenario: Scenario
  recordings: RecordingOf[]
  wish: LogSettings['wish']
  choices: LogSettings['choices']
}

/** What a response was asked of, with what was known of the log then. */
export interface RespondAbout extends ResponseQuestion {
  told: LogTold | null | undefined
}

export interface LogState {
  logs: OpenLog[]
  /** Logs over the model as it stands on the bench, and why not. */
  laid: (Laid & { about: Asked }) | null
  unlaid: Unfit | null
  fit: {
    status: 'idle' | 'running' | 'done' | 'failed' | 'stopped'
    done: number
    found: (FitTold & { about: Asked }) | null
    why: Unfit | null
  }
  /** A measured frequency response over that of the axis, and why there is none. */
  responded: (RespondedTold & { about: RespondAbout }) | null
  unresponded: Unfit | null
  open(files: Iterable<File>): void
  /** Also ends the reading of it. */
  close(id: number): void
  /** Another choice for a column takes the place of the one before; null: what was guessed. */
  choose(id: number, place: number, choice: ColumnChoice | null): void
  setRate(id: number, rate: number | null): void
  leaveOut(recording: RecordingOf, out: boolean): void
  setWish(wish: Partial<LogSettings['wish']>, gesture?: string): void
  setResponse(wish: Partial<ResponseWish>): void
  /** Asks for the response that is wished for; nothing where none is. */
  respond(scenario: Scenario): void
  lay(scenario: Scenario): void
  startFit(scenario: Scenario): void
  stopFit(): void
}

/** Fewer rows tell nothing. */
export const FEWEST = 50

export const keyOf = ({ log, recording }: RecordingOf) => `${log}/${recording}`

const NO_CHOICES: Choices = {}
const NOTHING_SAID = {}
const NO_FIT: LogState['fit'] = { status: 'idle', done: 0, found: null, why: null }

const ownChoices = ({ choices }: LogSettings, id: number): Choices => choices[id] ?? NO_CHOICES

/** With which a log is to be understood: as a person says, and by what the output of the axis on the bench does; the same for the same. */
export function choicesOf(settings: LogSettings, id: number): Choices {
  const own = ownChoices(settings, id)
  if (!turns()) return own
  const known = TURNED.get(own) ?? { ...own, turning: true }
  TURNED.set(own, known)
  return known
}

const TURNED = new WeakMap<Choices, Choices>()
const turns = () => jobOf(useScenario.getState().scenario).output.travel === 'rad'

/** Recordings that are laid over the model: of logs that are understood, those that are long enough and not left out. */
export const countedOf = (logs: readonly OpenLog[], { leftOut }: LogSettings): RecordingOf[] =>
  logs.flatMap(({ id, told }) =>
    (told?.recordings ?? [])
      .map((recording, at) => ({ log: id, recording: at, rows: recording.rows }))
      .filter((each) => each.rows >= FEWEST && !leftOut.includes(keyOf(each)))
      .map(({ log, recording }) => ({ log, recording })),
  )

/** Logs and tables that can show a frequency response, with what each is asked as. */
export const sourcesOf = (logs: readonly OpenLog[]): { key: string; log: number; recording: number | null }[] => [
  ...logs.flatMap(({ id, told }) => (told?.response ? [{ key: String(id), log: id, recording: null }] : [])),
  ...logs.flatMap(({ id, told }) =>
    (told?.recordings ?? []).flatMap(({ rows }, recording) =>
      rows >= FEWEST ? [{ key: keyOf({ log: id, recording }), log: id, recording }] : [],
    ),
  ),
]

/** The one that is shown; null: a response was neither opened nor asked for. */
export function sourceOf(logs: readonly OpenLog[], { response }: LogSettings) {
  const all = sourcesOf(logs)
  const wished = response.source === null ? undefined : all.find(({ key }) => key === response.source)
  return wished ?? all.find(({ recording }) => recording === null) ?? null
}

/** Something is still being read or understood anew. */
export const isBusy = (logs: readonly OpenLog[], settings: LogSettings) =>
  logs.some(({ id, status, asked }) => status === 'reading' || (status === 'read' && asked !== choicesOf(settings, id)))

const settings = () => useScenario.getState().logs
const change = (next: Partial<LogSettings>, gesture?: string) =>
  useScenario.getState().setLogs({ ...settings(), ...next }, gesture)

/** What a person says of logs stands beside the scenario. */
const SAID: Pick<LogState, 'choose' | 'setRate' | 'leaveOut' | 'setWish' | 'setResponse'> = {
  choose(id, place, choice) {
    const header = `#${place}`
    const before = ownChoices(settings(), id)
    const others = (before.columns ?? []).filter((each) => each.header !== header)
    const columns = choice ? [...others, { ...choice, header }] : others
    change({ choices: { ...settings().choices, [id]: { ...before, columns } } })
  },

  setRate(id, rate) {
    const { rate: _, ...before } = ownChoices(settings(), id)
    change({ choices: { ...settings().choices, [id]: rate === null ? before : { ...before, rate } } })
  },

  leaveOut(recording, out) {
    const others = settings().leftOut.filter((key) => key !== keyOf(recording))
    change({ leftOut: out ? [...others, keyOf(recording)] : others })
  },

  setWish: (wish, gesture) => change({ wish: { ...settings().wish, ...wish } }, gesture),

  setResponse: (wish) => change({ response: { ...settings().response, ...wish } }),
}

/** What is asked of the worker that reads logs, and what becomes of its answers. */
class Talk {
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

export const useLog = create<LogState>()((set, get) => {
  const talk = new Talk(set, get)
  useScenario.subscribe((now, before) => {
    if (now.logs.choices !== before.logs.choices || now.scenario.job !== before.scenario.job) talk.follow()
  })
  return {
    logs: [],
    laid: null,
    unlaid: null,
    fit: NO_FIT,
    responded: null,
    unresponded: null,
    ...SAID,
    open: (files) => talk.open(files),
    close: (id) => talk.close(id),
    respond: (scenario) => talk.respond(scenario),
    lay: (scenario) => talk.lay(scenario),
    startFit: (scenario) => talk.startFit(scenario),
    stopFit: () => talk.stopFit(),
  }
})

/** Whether what was asked is still what a person says of the logs. */
export const holds = ({ recordings, wish, choices }: Asked, logs: readonly OpenLog[], now: LogSettings) =>
  wish === now.wish &&
  choices === now.choices &&
  recordings.map(keyOf).join() === countedOf(logs, now).map(keyOf).join()

/** A choice of a person that cannot be: what was laid over the model before stays until it is mended. */
export const isHeld = (logs: readonly OpenLog[], { choices }: LogSettings) =>
  logs.some(({ id, told }) => choices[id] && (told?.faults.length ?? 0) > 0)

/** What was fitted still stands on the bench, with the values of before or with those found; name and notes do not matter. */
export const standsOn = (bench: Scenario, { about, scenario }: { about: { scenario: Scenario }; scenario: Scenario }) =>
  bench === about.scenario || lentOf('', bench, scenario).edits.every(({ path }) => path === 'notes' || path === 'name')

const sameResponse = (a: RespondAbout, b: RespondAbout) =>
  a.log === b.log && a.recording === b.recording && a.shown === b.shown && a.said === b.said && a.told === b.told

const fitStands = (bench: Scenario, { about, fit }: NonNullable<LogState['responded']>) =>
  fit ? standsOn(bench, { about, scenario: fit.scenario }) : bench === about.scenario
