/** What the log worker does: reads, understands, lays over the model, fits. Knows no worker: it is handed a crew and a way to answer. */
import {
  type Choices,
  type Crew,
  FitStopped,
  type Identified,
  identify,
  type Log,
  layOver,
  type Measured,
  type LogAnswer as ModelAnswer,
  measuredOf,
  NoFit,
  responseFrom,
  responseIn,
  spectrumOf,
  type Table,
  understand,
} from '../../sim/index.ts'
import type {
  FitQuestion,
  Laid,
  LaidRecording,
  LogAnswer,
  LogRequest,
  LogTold,
  Overlay,
  ResponseQuestion,
  Unfit,
} from './log-messages.ts'
import { readTable } from './log-reading.ts'
import { responded, responseTable } from './log-response.ts'
import { rowsKept, sketchOf } from './thin.ts'

/** Most rows of a line that is drawn, and of a column's small picture. */
const DRAWN = 40_000
const SKETCHED = 240

/** Shares of a file by which progress is told. */
const TELL = 0.005

export class LogDesk {
  private readonly crew: Crew
  private readonly answer: (answer: LogAnswer) => void
  private readonly reading = new Set<number>()
  private readonly tables = new Map<number, { table: Table; log: Log }>()
  /** The fit that is wanted, and the question that waits while another one is laid over the model. */
  private fitting = 0
  private laying = false
  private waiting: { turn: number; question: FitQuestion } | null = null

  constructor(crew: Crew, answer: (answer: LogAnswer) => void) {
    this.crew = crew
    this.answer = answer
  }

  async take(request: LogRequest): Promise<void> {
    switch (request.kind) {
      case 'read':
        return this.read(request.log, request.file)
      case 'close':
        this.reading.delete(request.log)
        this.tables.delete(request.log)
        return
      case 'understand':
        return this.understand(request.log, request.choices)
      case 'lay':
        return this.lay(request.turn, request.question)
      case 'fit':
        return this.fit(request.turn, request.question)
      case 'respond':
        return this.respond(request.turn, request.question)
      case 'stop':
        this.fitting = 0
    }
  }

  private async read(log: number, file: Blob): Promise<void> {
    this.reading.add(log)
    let told = 0
    try {
      const table = await readTable(file, (done) => {
        if (done - told >= TELL) {
          told = done
          this.answer({ kind: 'progress', log, done })
        }
        return this.reading.has(log)
      })
      if (!table || !this.reading.delete(log)) return
      this.tables.set(log, { table, log: understand(table) })
      this.tell(log, true)
    } catch {
      if (this.reading.delete(log)) this.answer({ kind: 'unreadable', log })
    }
  }

  private understand(log: number, choices: Choices): void {
    const known = this.tables.get(log)
    if (!known) return
    known.log = understand(known.table, choices)
    this.tell(log, false)
  }

  private tell(log: number, first: boolean): void {
    const { table, log: read } = this.tables.get(log)!
    const recordings = read.recordings.map(({ time: _, values: __, ...rest }) => rest)
    const response = recordings.length === 0 ? responseTable(table) : null
    // A table over frequency needs no time, nor columns that could be taken for something else.
    const told: LogTold = response
      ? { ...read, recordings, response, faults: [], columns: [], remarks: [] }
      : { ...read, recordings, response }
    const sketches = first
      ? table.columns.map(({ values }) => sketchOf(values.subarray(0, table.rows), SKETCHED))
      : null
    this.answer({ kind: 'understood', log, told, sketches })
  }

  /** Of questions that come while one is being laid, the last is next. */
  private async lay(turn: number, question: FitQuestion): Promise<void> {
    this.waiting = { turn, question }
    if (this.laying) return
    this.laying = true
    while (this.waiting) {
      const { turn: next, question: asked } = this.waiting
      this.waiting = null
      await this.trying(next, async () => {
        const { measured, taken } = this.measured(asked)
        const { logs, answers, residuals, alignment } = await layOver(asked.scenario, measured, asked.wish, this.crew)
        const recordings = logs.map((log, at) => laidRecording(log, answers[at]!, null))
        this.answer({ kind: 'laid', turn: next, laid: { recordings, residuals, alignment, taken } })
      })
    }
    this.laying = false
  }

  private async fit(turn: number, question: FitQuestion): Promise<void> {
    this.fitting = turn
    await this.trying(turn, async () => {
      const { scenario, wish } = question
      const { measured, taken } = this.measured(question)
      const found = await identify(scenario, measured, wish, this.crew, (done) => {
        this.answer({ kind: 'fitting', turn, done })
        return this.fitting === turn
      })
      const { values, untold, runs, settled } = found
      const fit = { ...laidOf(found), taken, values, untold, runs, settled, scenario: found.scenario }
      this.answer({ kind: 'fitted', turn, fit })
    })
  }

  private async respond(turn: number, { scenario, log, recording, shown, said }: ResponseQuestion): Promise<void> {
    await this.trying(turn, async () => {
      const { table, log: read } = this.tables.get(log)!
      const measured =
        recording === null
          ? responseIn(table, said)!.response
          : responseFrom(measuredOf(read.recordings[recording]!, scenario).measured, shown)
      this.answer({ kind: 'responded', turn, responded: responded(scenario, measured, shown, whyOf) })
    })
  }

  private measured({ recordings, scenario }: FitQuestion) {
    const all = recordings.map(({ log, recording }) =>
      measuredOf(this.tables.get(log)!.log.recordings[recording]!, scenario),
    )
    return { measured: all.map((each): Measured => each.measured), taken: all.flatMap(({ taken }) => taken) }
  }

  private async trying(turn: number, work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      if (error instanceof FitStopped) this.answer({ kind: 'stopped', turn })
      else this.answer({ kind: 'unfit', turn, why: whyOf(error) })
    }
  }
}

const whyOf = (error: unknown): Unfit =>
  error instanceof NoFit ? { fault: error.fault } : { message: error instanceof Error ? error.message : String(error) }

const laidOf = ({ logs, before, after, residuals, alignment }: Identified): Omit<Laid, 'taken'> => ({
  recordings: logs.map((log, at) => laidRecording(log, before[at]!, after[at]!)),
  residuals,
  alignment,
})

function laidRecording(
  { measured, setup }: Identified['logs'][number],
  before: ModelAnswer,
  after: ModelAnswer | null,
): LaidRecording {
  const { time, channels } = measured
  const start = time[0]!
  const overlays = CHANNELS.flatMap((channel): Overlay[] => {
    const column = channels[channel]
    if (!column || column.every(Number.isNaN)) return []
    const left = (shown: Float64Array) => column.map((value, row) => value - shown[row]!)
    const [old, now] = [left(before[channel]), after && left(after[channel])]
    const rows = rowsKept([column, now ?? old], DRAWN)
    const kept = (values: Float64Array) => Float64Array.from(rows, (row) => values[row]!)
    return [
      {
        channel,
        time: Float64Array.from(rows, (row) => time[row]! - start),
        measured: kept(column),
        before: kept(before[channel]),
        after: after && kept(after[channel]),
        spectra: { before: spectrumOf(time, old), after: now && spectrumOf(time, now) },
      },
    ]
  })
  return { setup, step: (time.at(-1)! - start) / (time.length - 1), overlays }
}

/** In the order in which they are shown. */
const CHANNELS = ['motorTravel', 'travel', 'speed', 'command', 'current', 'voltage', 'force'] as const
