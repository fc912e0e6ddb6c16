/** Logs laid over a scenario: what drives each, what the model shows of it, what is left, and how the two lie to each other. */
import type { Crew } from '../ask/spread/tasks.ts'
import type { Scenario } from '../scenario/index.ts'
import { delayOf, startOf } from './align.ts'
import { astrayIn } from './astray.ts'
import { type Alignment, type FitWish, NoFit, type ResidualOf } from './facts.ts'
import { comparedOf, rms } from './fit.ts'
import { logOf } from './jobs/index.ts'
import type { JobLog } from './jobs/job.ts'
import { type AnswerChannel, type Measured, wholeColumn } from './measured.ts'
import type { Answer, Driver, ReplaySetup } from './replay.ts'
import { BREAKAWAY, COULOMB } from './replayed.ts'
import { type LaidLog, smoothSpeed } from './stages.ts'
import { touchOf } from './touch.ts'

/** Slower than this nothing moves [m/s]. */
const STILL = 1e-9

/** How the logs are laid over a scenario. Throws a NoFit where one has nothing that could drive the axis, or nothing moves. */
export function laid(scenario: Scenario, measured: readonly Measured[], wish: FitWish): LaidLog[] {
  const logs = measured.map((each, log): LaidLog => {
    const setup = setupOf(each, wish, log, logOf(scenario))
    // Who presses on a part lags behind the reference for good.
    return { measured: each, setup, astray: setup.contact ? [] : astrayIn(each) }
  })
  if (logs.every(({ measured: each }) => !moves(each))) throw new NoFit({ kind: 'still' })
  for (const log of logs.keys())
    if (!comparedOf(logs).some(({ recording }) => recording === log)) throw new NoFit({ kind: 'nothing-compares', log })
  return logs
}

/** Logs over a scenario as it stands. */
export interface Overlaid {
  logs: LaidLog[]
  answers: Answer[]
  residuals: ResidualOf[]
  alignment: Alignment[]
}

/** Lays logs over a scenario without fitting it. Throws as `laid` does, and a RangeError where the model cannot be run. */
export async function layOver(
  scenario: Scenario,
  measured: readonly Measured[],
  wish: FitWish,
  crew: Crew,
): Promise<Overlaid> {
  const logs = laid(scenario, measured, wish)
  const answers = await simulated(logs, crew, scenario)
  if (!answers) throw new RangeError('the model cannot be run with the values of the scenario')
  const alignment = logs.map((log, at) => alignmentOf(log, at, answers[at]!))
  return { logs, answers, residuals: residualsOf(logs, answers, answers), alignment }
}

function setupOf(
  measured: Measured,
  { part, origin = 0, drivenBy: wanted }: FitWish,
  log: number,
  { always, drivenBy: usual = 'target' }: JobLog,
): ReplaySetup {
  const { channels } = measured
  const has = {
    target: channels.target,
    motorTravel: channels.motorTravel,
    current: channels.command ?? channels.current,
  }
  if (wanted && !has[wanted]) throw new NoFit({ kind: 'nothing-drives', log })
  const drivenBy: Driver | null = wanted
    ? wanted
    : has[usual]
      ? usual
      : channels.target
        ? 'target'
        : channels.motorTravel && (channels.current || channels.command)
          ? 'motorTravel'
          : channels.current || channels.command
            ? 'current'
            : null
  if (!drivenBy) throw new NoFit({ kind: 'nothing-drives', log })
  const force = wholeColumn(measured, 'force')
  return { drivenBy, contact: always === true || (part ?? (force !== null && startOf(force) >= 0)), origin }
}

function moves(measured: Measured): boolean {
  const speed = smoothSpeed(measured)
  return speed?.some((v) => Math.abs(v) > STILL) === true
}

/**
 * What the model shows of logs with values in the place of those at some keys, a set a row; null: its rules forbid them. It is asked
 * again and again: what all questions share goes to the workers once. `shown`: channels that are looked at; null: all.
 */
export function simulator(
  logs: LaidLog[],
  crew: Crew,
  scenario: Scenario,
  paths: string[],
  shown: AnswerChannel[] | null,
): (sets: number[][]) => Promise<(Answer[] | null)[]> {
  const { breakaway, coulomb } = scenario.actuator.transmission
  const rise = paths.includes(COULOMB) && !paths.includes(BREAKAWAY) ? breakaway - coulomb : null
  const shared = { scenario, paths, logs, rise, shown }
  return async (sets) => {
    const found: (Answer[] | null)[] = sets.map(() => null)
    await crew.work('replayed', shared, sets, (answer, at) => {
      found[at] = answer
      return true
    })
    return found
  }
}

/** Of a scenario as it stands. */
export const simulated = async (logs: LaidLog[], crew: Crew, scenario: Scenario): Promise<Answer[] | null> =>
  (await simulator(logs, crew, scenario, [], null)([[]]))[0] ?? null

export function comparisons(logs: readonly LaidLog[], answers: readonly Answer[]) {
  return comparedOf(logs, EVERY).map(({ recording, channel, rows, measured }) => {
    const shown = answers[recording]![channel]
    return { log: recording, channel, measured, left: measured.map((value, k) => value - shown[rows[k]!]!) }
  })
}

const EVERY: AnswerChannel[] = ['motorTravel', 'travel', 'speed', 'command', 'current', 'voltage', 'force']

export function residualsOf(
  logs: readonly LaidLog[],
  before: readonly Answer[],
  after: readonly Answer[],
): ResidualOf[] {
  const old = comparisons(logs, before)
  return comparisons(logs, after).map(({ log, channel, measured, left }, at) => ({
    log,
    channel,
    rms: rms(left),
    before: rms(old[at]!.left),
    relative: rms(measured) > 0 ? rms(left) / rms(measured) : null,
  }))
}

/** Delays are looked for up to this [s]. */
const LATEST = 0.05

export function alignmentOf(log: LaidLog, at: number, shown: Answer): Alignment {
  const { measured, setup } = log
  const { time } = measured
  const position = wholeColumn(measured, 'motorTravel') ?? wholeColumn(measured, 'speed')
  const since = (row: number) => (row >= 0 && row < time.length ? time[row]! - time[0]! : null)
  const late = EVERY.flatMap((channel) => {
    const column = channel === 'force' && !setup.contact ? null : wholeColumn(measured, channel)
    return column ? [{ channel, delay: delayOf(time, shown[channel], column, LATEST) }] : []
  })
  return {
    log: at,
    astray: log.astray,
    motion: position ? since(startOf(position)) : null,
    touch: setup.contact ? since(touchOf(log)) : null,
    late,
  }
}
