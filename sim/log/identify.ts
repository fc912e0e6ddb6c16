/** A fit from one end to the other: how logs are laid over a scenario, the stages, how sure the values are, and what stays untold. */
import type { Crew } from '../ask/spread/tasks.ts'
import { type Edit, editScenario, quantityAt, Refusal, readPath, type Scenario } from '../scenario/index.ts'
import { delayOf, startOf } from './align.ts'
import { certaintyOf } from './certainty.ts'
import { type Compared, comparedOf, type Fitted, fit, type OnFit, rms } from './fit.ts'
import type { InverseModel } from './inverse.ts'
import type { AnswerChannel, Measured } from './measured.ts'
import { wholeColumn } from './measured.ts'
import type { Answer, Driver, ReplaySetup } from './replay.ts'
import { BREAKAWAY, COULOMB, DELAY } from './replayed.ts'
import {
  inverseEdits,
  inverseOf,
  type LaidLog,
  partEdits,
  rangeOf,
  reverses,
  type Stage,
  slidingRows,
  smoothSpeed,
  stagesOf,
  touchOf,
} from './stages.ts'

export interface FitWish {
  /** Keys that are free; null: what the logs can tell. */
  free: string[] | null
  /** A part stands between the jaws; null: where a force rises. */
  part?: boolean | null
  /** What drives the model; null: the way that was wanted where the log has it. */
  drivenBy?: Driver | null
  /** Travel of the output where the log's position reads 0 [m]. */
  origin?: number
}

export interface FittedValue {
  path: string
  from: number | null
  value: number
  /** 95 % interval; null: the log does not tell that end. */
  low: number | null
  high: number | null
}

export interface ResidualOf {
  log: number
  channel: AnswerChannel
  /** Root mean square of measured less simulated [SI], and the same before the fit. */
  rms: number
  before: number
  /** Norm of what is left over the norm of what was measured; null where that is 0. */
  relative: number | null
}

/** What a log does not tell. */
export type Untold =
  /** Its interval is wider than half of it. */
  | { kind: 'hardly'; paths: [string] }
  /** The answer does not change with it. */
  | { kind: 'nothing'; paths: [string] }
  /** It ended at an end of its range. */
  | { kind: 'end'; paths: [string]; bound: number }
  | { kind: 'together'; paths: [string, string]; correlation: number }
  /** Forces are known as currents only: all of these as their ratio to the force constant. */
  | { kind: 'ratio'; paths: string[]; constant: string }

/** Where a log begins to tell, and how it lies over the model. */
export interface Alignment {
  log: number
  /** First motion and first touch, from the first row on [s]; null: none. */
  motion: number | null
  touch: number | null
  /** By how much a channel shows later what the fitted model shows [s], by correlation; null: they do not correlate. */
  late: { channel: AnswerChannel; delay: number | null }[]
}

export interface Identified {
  values: FittedValue[]
  residuals: ResidualOf[]
  untold: Untold[]
  alignment: Alignment[]
  inverse: InverseModel | null
  logs: LaidLog[]
  /** What the model shows with the values, and with those of the file, a log each. */
  after: Answer[]
  before: Answer[]
  scenario: Scenario
  runs: number
  settled: boolean
}

/** Why there is no fit. */
export type FitFault =
  | { kind: 'still' }
  | { kind: 'nothing-drives'; log: number }
  | { kind: 'nothing-compares'; log: number }
  | { kind: 'no-quantity'; path: string }
  | { kind: 'nothing-free' }
  | { kind: 'another-axis'; channel: AnswerChannel; share: number }

export class NoFit extends Error {
  readonly fault: FitFault
  constructor(fault: FitFault) {
    super(fault.kind)
    this.fault = fault
  }
}

/** So much of what drives the axis may stay unexplained; beyond, the model is not one of this axis. */
const MOST_LEFT = 0.5
/** Correlation from which two values cannot be told apart, and a half interval from which one is hardly told. */
const TOGETHER = 0.95
const HARDLY = 0.5
/** Slower than this nothing moves [m/s]. */
const STILL = 1e-9

/** How the logs are laid over a scenario. Throws a NoFit where one has nothing that could drive the axis, or nothing moves. */
export function laid(measured: readonly Measured[], wish: FitWish): LaidLog[] {
  const logs = measured.map((each, log) => ({ measured: each, setup: setupOf(each, wish, log) }))
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
  const logs = laid(measured, wish)
  const [answers] = await new Fitter(logs, crew, () => true, 1).simulated(scenario, [], [[]])
  if (!answers) throw new RangeError('the model cannot be run with the values of the scenario')
  const alignment = logs.map((log, at) => alignmentOf(log, at, answers[at]!))
  return { logs, answers, residuals: residualsOf(logs, answers, answers), alignment }
}

function setupOf(measured: Measured, { part, origin = 0, drivenBy: wanted }: FitWish, log: number): ReplaySetup {
  const { channels } = measured
  const has = {
    target: channels.target,
    motorTravel: channels.motorTravel,
    current: channels.command ?? channels.current,
  }
  if (wanted && !has[wanted]) throw new NoFit({ kind: 'nothing-drives', log })
  const drivenBy: Driver | null = wanted
    ? wanted
    : channels.target
      ? 'target'
      : channels.motorTravel && (channels.current || channels.command)
        ? 'motorTravel'
        : channels.current || channels.command
          ? 'current'
          : null
  if (!drivenBy) throw new NoFit({ kind: 'nothing-drives', log })
  const force = wholeColumn(measured, 'force')
  return { drivenBy, contact: part ?? (force !== null && startOf(force) >= 0), origin }
}

function moves(measured: Measured): boolean {
  const speed = smoothSpeed(measured)
  return speed?.some((v) => Math.abs(v) > STILL) === true
}

/**
 * Fits a scenario to logs. Throws a NoFit where that cannot be done, a FitStopped where it is told to stop, a Refusal where the rules of
 * the format or the step forbid what the logs say.
 */
export async function identify(
  scenario: Scenario,
  measured: readonly Measured[],
  wish: FitWish,
  crew: Crew,
  told: OnFit = () => true,
): Promise<Identified> {
  for (const path of wish.free ?? [])
    if (path !== DELAY && !quantityAt(scenario, path)) throw new NoFit({ kind: 'no-quantity', path })
  const logs = laid(measured, wish)
  const inverse = inverseOf(logs, scenario, {
    viscousByDirection: wish.free ? wish.free.includes(VISCOUS_BACK) : logs.some(reverses),
    coulombByDirection: wish.free?.includes(COULOMB_BACK) ?? false,
  })
  const stages = wish.free ? [stageOf(wish.free)] : stagesOf(scenario, logs, inverse)
  const paths = [...new Set(stages.flatMap((stage) => stage.paths))]
  if (paths.length === 0) throw new NoFit({ kind: 'nothing-free' })
  const starts = startEdits(scenario, logs, inverse).filter(({ path }) =>
    paths.includes(path === BREAKAWAY ? COULOMB : path),
  )
  const fitter = new Fitter(logs, crew, told, stages.length)
  let now = changed(scenario, starts)
  let settled = true
  const values: FittedValue[] = []
  const untold: Untold[] = []
  for (const stage of stages) {
    const fitted = await fitter.run(now, stage)
    const said = valuesOf(scenario, now, stage.paths, fitted)
    values.push(...said.values)
    untold.push(...said.untold)
    now = withValues(now, stage.paths, fitted.plain)
    settled &&= fitted.settled
  }
  const [before, after] = await fitter.answers([scenario, now])
  describes(logs, after)
  return {
    values,
    residuals: residualsOf(logs, before, after),
    untold: [...untold, ...ratioOf(scenario, logs, paths)],
    alignment: logs.map((log, at) => alignmentOf(log, at, after[at]!)),
    inverse,
    logs,
    before,
    after,
    scenario: now,
    runs: fitter.runs,
    settled,
  }
}

const VISCOUS_BACK = 'actuator.transmission.viscousBack'
const COULOMB_BACK = 'actuator.transmission.coulombBack'
const BRISTLE = 'actuator.transmission.bristleStiffness'

/** Where standing itself is asked for, standing rows count. */
const stageOf = (paths: string[]): Stage => ({ paths, sliding: !paths.includes(BRISTLE) && !paths.includes(BREAKAWAY) })

/** What the logs say at once, before anything is simulated. */
function startEdits(scenario: Scenario, logs: readonly LaidLog[], inverse: InverseModel | null): Edit[] {
  const touching = logs.find(({ setup }) => setup.contact)
  const moving = inverse ? inverseEdits(scenario, inverse) : []
  const coulomb = moving.find(({ path }) => path === COULOMB)
  const { breakaway, coulomb: before } = scenario.actuator.transmission
  return [
    ...moving,
    ...(coulomb ? [{ path: BREAKAWAY, value: risen(coulomb.value as number, breakaway - before) }] : []),
    ...(touching ? partEdits(scenario, touching) : []),
  ]
}

/** Break-away friction so much above Coulomb friction, never below it by rounding. */
const risen = (coulomb: number, rise: number) => Math.max(coulomb, coulomb + rise)

/** Values beyond their ranges are taken to the ends of these. Throws a Refusal where the rules of the format forbid the others. */
function changed(scenario: Scenario, edits: readonly Edit[]): Scenario {
  const inside = edits.map(({ path, value }) => {
    const { minimum, maximum } = quantityAt(scenario, path)!
    return { path, value: Math.min(maximum, Math.max(minimum, value as number)) }
  })
  const made = editScenario(scenario, inside)
  if (!made.ok) throw new Refusal(made.faults[0]!)
  return made.scenario
}

/** A key of friction by direction that is left out stands for that of the other direction. */
function valueNow(scenario: Scenario, path: string): number | null {
  const value = readPath(scenario, path)
  if (typeof value === 'number') return value
  if (path === COULOMB_BACK) return scenario.actuator.transmission.coulomb
  if (path === VISCOUS_BACK) return scenario.actuator.transmission.viscous
  return null
}

/** A stage that is done; `values` of a quantity that is searched by its size are logarithms, `plain` are those of the file. */
interface Staged extends Fitted {
  plain: number[]
}

/** Stages one after the other, on the workers of a crew. */
class Fitter {
  runs = 0
  private readonly logs: LaidLog[]
  private readonly crew: Crew
  private readonly told: OnFit
  private readonly stages: number
  private stage = 0

  constructor(logs: LaidLog[], crew: Crew, told: OnFit, stages: number) {
    this.logs = logs
    this.crew = crew
    this.told = told
    this.stages = stages
  }

  async run(scenario: Scenario, { paths, sliding }: Stage): Promise<Staged> {
    const start = present(scenario, paths)
    const ranges = paths.map((path) => rangeOf(start, path))
    const free = ranges.map(({ log, small, start: from, least, most }, p) => {
      const on = (value: number) => (log ? Math.log(value) : value)
      return { path: paths[p]!, small, start: on(from), least: on(least), most: on(most) }
    })
    const plain = (values: number[]) => values.map((value, p) => (ranges[p]!.log ? Math.exp(value) : value))
    const compared = comparedOf(this.logs).map((each) => (sliding ? this.sliding(each) : each))
    for (const log of this.logs.keys())
      if (!compared.some(({ recording, rows }) => recording === log && rows.length > paths.length))
        throw new NoFit({ kind: 'nothing-compares', log })
    const fitted = await fit(
      free,
      compared,
      (sets) => this.simulated(start, paths, sets.map(plain)),
      (done) => this.told((this.stage + done) / this.stages),
    )
    this.stage++
    this.runs += fitted.runs
    return { ...fitted, plain: plain(fitted.values) }
  }

  /** Of scenarios as they stand. */
  async answers(scenarios: Scenario[]): Promise<[Answer[], Answer[]]> {
    const all = await Promise.all(scenarios.map((scenario) => this.simulated(scenario, [], [[]])))
    const [before, after] = all.map(([answer]) => answer)
    if (!after) throw new RangeError('the model cannot be run with the values found')
    return [before ?? after, after]
  }

  async simulated(scenario: Scenario, paths: string[], sets: number[][]): Promise<(Answer[] | null)[]> {
    const { breakaway, coulomb } = scenario.actuator.transmission
    const rise = paths.includes(COULOMB) && !paths.includes(BREAKAWAY) ? breakaway - coulomb : null
    const found: (Answer[] | null)[] = sets.map(() => null)
    await this.crew.work('replayed', { scenario, paths, logs: this.logs, rise }, sets, (answer, at) => {
      found[at] = answer
      return true
    })
    return found
  }

  private sliding(compared: Compared): Compared {
    const counts = slidingRows(this.logs[compared.recording]!)
    const kept = [...compared.rows.keys()].filter((k) => counts(compared.rows[k]!))
    return {
      ...compared,
      rows: Int32Array.from(kept, (k) => compared.rows[k]!),
      measured: Float64Array.from(kept, (k) => compared.measured[k]!),
    }
  }
}

/** With every free key written out. */
const present = (scenario: Scenario, paths: readonly string[]): Scenario =>
  changed(
    scenario,
    paths.flatMap((path) => {
      const value = path === DELAY ? null : valueNow(scenario, path)
      if (path !== DELAY && value === null) throw new NoFit({ kind: 'no-quantity', path })
      return value === null || readPath(scenario, path) === value ? [] : [{ path, value }]
    }),
  )

function withValues(scenario: Scenario, paths: readonly string[], values: readonly number[]): Scenario {
  const edits = paths.flatMap((path, p) => (path === DELAY ? [] : [{ path, value: values[p]! }]))
  const { breakaway, coulomb } = scenario.actuator.transmission
  const follows = edits.find(({ path }) => path === COULOMB)
  const own = edits.find(({ path }) => path === BREAKAWAY)
  if (follows && own) own.value = Math.max(own.value, follows.value)
  if (follows && !own) edits.push({ path: BREAKAWAY, value: risen(follows.value, breakaway - coulomb) })
  return changed(scenario, edits)
}

function valuesOf(
  file: Scenario,
  start: Scenario,
  paths: string[],
  fitted: Staged,
): { values: FittedValue[]; untold: Untold[] } {
  const { half, correlations } = certaintyOf(fitted)
  const untold: Untold[] = []
  const values = paths.map((path, p) => {
    const value = fitted.plain[p]!
    const { least, most, log } = rangeOf(present(start, paths), path)
    const at = (side: number) => {
      const end = fitted.values[p]! + side * half[p]!
      return Math.min(most, Math.max(least, log ? Math.exp(end) : end))
    }
    const known = Number.isFinite(half[p]!)
    if (!known) untold.push({ kind: 'nothing', paths: [path] })
    else if (value <= least || value >= most) untold.push({ kind: 'end', paths: [path], bound: value })
    else if (half[p]! > HARDLY * (log ? 1 : Math.abs(value))) untold.push({ kind: 'hardly', paths: [path] })
    for (let q = p + 1; q < paths.length; q++)
      if (Math.abs(correlations[p]![q]!) > TOGETHER)
        untold.push({ kind: 'together', paths: [path, paths[q]!], correlation: correlations[p]![q]! })
    const from = path === DELAY ? 0 : valueNow(file, path)
    return { path, from, value, low: known ? at(-1) : null, high: known ? at(1) : null }
  })
  return { values, untold }
}

/** Throws a NoFit where what drives the axis stays unexplained. */
function describes(logs: readonly LaidLog[], after: readonly Answer[]): void {
  for (const { channel, left, measured } of comparisons(logs, after)) {
    if (channel !== 'current' && channel !== 'command' && channel !== 'force') continue
    const mean = measured.reduce((sum, each) => sum + each, 0) / measured.length
    const share = rms(left) / (rms(measured.map((each) => each - mean)) || 1)
    if (!(share < MOST_LEFT)) throw new NoFit({ kind: 'another-axis', channel, share })
  }
}

function comparisons(logs: readonly LaidLog[], answers: readonly Answer[]) {
  return comparedOf(logs, EVERY).map(({ recording, channel, rows, measured }) => {
    const shown = answers[recording]![channel]
    return { log: recording, channel, measured, left: measured.map((value, k) => value - shown[rows[k]!]!) }
  })
}

const EVERY: AnswerChannel[] = ['motorTravel', 'travel', 'speed', 'command', 'current', 'voltage', 'force']

function residualsOf(logs: readonly LaidLog[], before: readonly Answer[], after: readonly Answer[]): ResidualOf[] {
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

function alignmentOf(log: LaidLog, at: number, shown: Answer): Alignment {
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
    motion: position ? since(startOf(position)) : null,
    touch: setup.contact ? since(touchOf(log)) : null,
    late,
  }
}

/** Without voltage or force, a log of currents knows forces as their ratio to the force constant only. */
function ratioOf({ actuator }: Scenario, logs: readonly LaidLog[], paths: readonly string[]): Untold[] {
  if (logs.some(({ measured: { channels } }) => channels.voltage || channels.force)) return []
  const forces = paths.filter((path) => /[mM]ass$|inertia$|oulomb|viscous|breakaway|bristleStiffness/.test(path))
  const constant = actuator.kind === 'direct' ? 'actuator.motor.forceConstant' : 'actuator.motor.torqueConstant'
  return forces.length > 0 ? [{ kind: 'ratio', paths: forces, constant }] : []
}
