/** What there is of the logs that are open, and what is read off it. */
import { type Choices, type ColumnChoice, jobOf, type Scenario } from '../../sim/index.ts'
import type {
  FitTold,
  Laid,
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

export const NO_CHOICES: Choices = {}
export const NOTHING_SAID = {}
export const NO_FIT: LogState['fit'] = { status: 'idle', done: 0, found: null, why: null }

export const ownChoices = ({ choices }: LogSettings, id: number): Choices => choices[id] ?? NO_CHOICES

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

export const sameResponse = (a: RespondAbout, b: RespondAbout) =>
  a.log === b.log && a.recording === b.recording && a.shown === b.shown && a.said === b.said && a.told === b.told

export const fitStands = (bench: Scenario, { about, fit }: NonNullable<LogState['responded']>) =>
  fit ? standsOn(bench, { about, scenario: fit.scenario }) : bench === about.scenario
