/** A fit from one end to the other: how logs are laid over a scenario, the stages, how sure the values are, and what stays untold. */
import type { Crew } from '../ask/spread/tasks.ts'
import { quantityAt, type Scenario } from '../scenario/index.ts'
import { certaintyOf } from './certainty.ts'
import { type Alignment, type FittedValue, type FitWish, NoFit, type ResidualOf, type Untold } from './facts.ts'
import { type Compared, comparedOf, type Fitted, fit, type OnFit, rms } from './fit.ts'
import type { InverseModel } from './inverse.ts'
import { alignmentOf, comparisons, laid, residualsOf, simulated, simulator } from './lay.ts'
import type { Measured } from './measured.ts'
import type { Answer } from './replay.ts'
import { BREAKAWAY, COULOMB, DELAY } from './replayed.ts'
import { inverseOf, type LaidLog, rangeOf, reverses, type Stage, slidingRows, stagesOf } from './stages.ts'
import { BRISTLE, COULOMB_BACK, changed, present, startEdits, VISCOUS_BACK, valueNow, withValues } from './values.ts'

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

/** So much of what drives the axis may stay unexplained; beyond, the model is not one of this axis. */
const MOST_LEFT = 0.5
/** Correlation from which two values cannot be told apart, and a half interval from which one is hardly told. */
const TOGETHER = 0.95
const HARDLY = 0.5

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
  const asked = wish.free && [...new Set(wish.free)]
  for (const path of asked ?? [])
    if (path !== DELAY && !quantityAt(scenario, path)) throw new NoFit({ kind: 'no-quantity', path })
  const logs = laid(scenario, measured, wish)
  const inverse = inverseOf(logs, scenario, {
    viscousByDirection: asked ? asked.includes(VISCOUS_BACK) : logs.some(reverses),
    coulombByDirection: asked?.includes(COULOMB_BACK) ?? false,
  })
  const stages = asked ? [stageOf(asked)] : stagesOf(scenario, logs, inverse)
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
    // What a later stage has moved along, such as break-away friction with Coulomb friction, as it stands at the end.
    values: values.map((each) => ({ ...each, value: valueNow(now, each.path) ?? each.value })),
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

/** Where standing itself is asked for, standing rows count. */
const stageOf = (paths: string[]): Stage => ({ paths, sliding: !paths.includes(BRISTLE) && !paths.includes(BREAKAWAY) })

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
    const shown = [...new Set(compared.map(({ channel }) => channel))]
    const ask = simulator(this.logs, this.crew, start, paths, shown)
    const fitted = await fit(
      free,
      compared,
      (sets) => ask(sets.map(plain)),
      (done) => this.told((this.stage + done) / this.stages),
    )
    this.stage++
    this.runs += fitted.runs
    return { ...fitted, plain: plain(fitted.values) }
  }

  /** Of scenarios as they stand. */
  async answers(scenarios: Scenario[]): Promise<[Answer[], Answer[]]> {
    const [before, after] = await Promise.all(scenarios.map((scenario) => simulated(this.logs, this.crew, scenario)))
    if (!after) throw new RangeError('the model cannot be run with the values found')
    return [before ?? after, after]
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

/**
 * Throws a NoFit where what the log is held against stays unexplained: the current where a way was given, the motion where the current
 * was, and the force of a part.
 */
function describes(logs: readonly LaidLog[], after: readonly Answer[]): void {
  for (const { log, channel, left, measured } of comparisons(logs, after)) {
    const { drivenBy, contact } = logs[log]!.setup
    const answers = drivenBy === 'current' ? ['motorTravel', 'speed'] : ['current', 'command']
    if (!answers.includes(channel) && !(channel === 'force' && contact)) continue
    const mean = measured.reduce((sum, each) => sum + each, 0) / measured.length
    const share = rms(left) / (rms(measured.map((each) => each - mean)) || 1)
    if (!(share < MOST_LEFT)) throw new NoFit({ kind: 'another-axis', channel, share })
  }
}

/** Without voltage or the force of a part, a log of currents knows forces as their ratio to the force constant only. */
function ratioOf({ actuator }: Scenario, logs: readonly LaidLog[], paths: readonly string[]): Untold[] {
  // A gauge that nothing touches shows its noise.
  if (logs.some(({ measured: { channels }, setup }) => channels.voltage || (channels.force && setup.contact))) return []
  const forces = paths.filter((path) => /[mM]ass$|inertia$|oulomb|viscous|breakaway|bristleStiffness/.test(path))
  const constant = actuator.kind === 'direct' ? 'actuator.motor.forceConstant' : 'actuator.motor.torqueConstant'
  return forces.length > 0 ? [{ kind: 'ratio', paths: forces, constant }] : []
}
