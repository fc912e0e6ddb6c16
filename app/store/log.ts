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

export const useLog = create<LogState>()((set, get) => {
  let ids = 0
  /** Counts questions: of fits and of layings only the last one's answer is taken. */
  let turns = 0
  let laying = 0
  let fitting = 0
  let responding: { turn: number; question: RespondAbout } | null = null
  let about = new Map<number, Asked>()
  let worker: LogWorker | null = null

  const settings = () => useScenario.getState().logs
  const change = (next: Partial<LogSettings>, gesture?: string) =>
    useScenario.getState().setLogs({ ...settings(), ...next }, gesture)
  const put = (id: number, next: Partial<OpenLog>) =>
    set({ logs: get().logs.map((log) => (log.id === id ? { ...log, ...next } : log)) })

  const toldOf = (id: number) => get().logs.find((log) => log.id === id)?.told

  const hear = (answer: LogAnswer) => {
    switch (answer.kind) {
      case 'progress':
        return put(answer.log, { done: answer.done })
      case 'understood': {
        const { log, told, sketches } = answer
        // What makes no sense as it was said tells nothing of the columns: they stay as they were.
        const columns = told.columns.length > 0 ? told.columns : (toldOf(log)?.columns ?? [])
        put(log, { status: 'read', told: { ...told, columns }, ...(sketches && { sketches }) })
        return follow()
      }
      case 'unreadable':
        return put(answer.log, { status: 'unreadable' })
      case 'laid':
        if (answer.turn === laying) set({ laid: { ...answer.laid, about: take(answer.turn) }, unlaid: null })
        return
      case 'fitting':
        if (answer.turn === fitting) set({ fit: { ...get().fit, done: answer.done } })
        return
      case 'fitted': {
        if (answer.turn !== fitting) return
        const found = { ...answer.fit, about: take(answer.turn) }
        return set({ fit: { status: 'done', done: 1, found, why: null } })
      }
      case 'responded':
        if (answer.turn !== responding?.turn) return
        return set({ responded: { ...answer.responded, about: responding.question }, unresponded: null })
      case 'unfit':
        if (answer.turn === responding?.turn) set({ responded: null, unresponded: answer.why })
        if (answer.turn === laying) set({ laid: null, unlaid: answer.why })
        if (answer.turn === fitting) set({ fit: { ...NO_FIT, status: 'failed', why: answer.why } })
    }
  }
  const lost = () => {
    about = new Map()
    const unread = { status: 'unreadable', told: null } as const
    set({ logs: get().logs.map((log) => ({ ...log, ...unread })), laid: null, unlaid: null, fit: NO_FIT })
    set({ responded: null, unresponded: null })
  }
  const ask: LogWorker['ask'] = (request) => {
    worker ??= logWorker(hear, lost)
    worker.ask(request)
  }
  const take = (turn: number): Asked => {
    const asked = about.get(turn)!
    about.delete(turn)
    return asked
  }
  const question = (scenario: Scenario): { turn: number; question: Asked } => {
    const { wish, choices } = settings()
    const asked = { scenario, recordings: countedOf(get().logs, settings()), wish, choices }
    about.set(++turns, asked)
    return { turn: turns, question: asked }
  }
  /** Asks anew where a choice has changed since, be it by undo. */
  const follow = () => {
    for (const { id, status, asked } of get().logs) {
      const wanted = choicesOf(settings(), id)
      if (status !== 'read' || asked === wanted) continue
      put(id, { asked: wanted })
      ask({ kind: 'understand', log: id, choices: wanted })
    }
  }
  useScenario.subscribe((now, before) => {
    if (now.logs.choices !== before.logs.choices || now.scenario.job !== before.scenario.job) follow()
  })

  return {
    logs: [],
    laid: null,
    unlaid: null,
    fit: NO_FIT,
    responded: null,
    unresponded: null,

    open(files) {
      for (const file of files) {
        const log = { id: ++ids, name: file.name, size: file.size, done: 0, told: null, sketches: [] }
        set({ logs: [...get().logs, { ...log, status: 'reading', asked: NO_CHOICES }] })
        ask({ kind: 'read', log: log.id, file })
      }
    },

    close(id) {
      ask({ kind: 'close', log: id })
      set({ logs: get().logs.filter((log) => log.id !== id) })
      if (get().responded?.about.log === id) set({ responded: null, unresponded: null })
    },

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

    respond(scenario) {
      const source = sourceOf(get().logs, settings())
      if (!source) {
        responding = null
        return set({ responded: null, unresponded: null })
      }
      const { shown, said } = settings().response
      const { log, recording } = source
      const question = { scenario, log, recording, shown, said: said[log] ?? NOTHING_SAID, told: toldOf(log) }
      const { responded } = get()
      if (responded && sameResponse(responded.about, question) && fitStands(scenario, responded)) return
      responding = { turn: ++turns, question }
      ask({ kind: 'respond', turn: turns, question: { scenario, log, recording, shown, said: question.said } })
    },

    lay(scenario) {
      if (countedOf(get().logs, settings()).length === 0) {
        laying = 0
        return set({ laid: null, unlaid: null })
      }
      const next = question(scenario)
      about.delete(laying)
      laying = next.turn
      ask({ kind: 'lay', ...next })
    },

    startFit(scenario) {
      const next = question(scenario)
      about.delete(fitting)
      fitting = next.turn
      set({ fit: { ...NO_FIT, status: 'running' } })
      ask({ kind: 'fit', ...next })
    },

    stopFit() {
      fitting = 0
      ask({ kind: 'stop' })
      set({ fit: { ...get().fit, status: 'stopped' } })
    },
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
