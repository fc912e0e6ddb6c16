/** Jobs asked for from a blank sheet, and what comes of the answers. */
import { isOpenLoop } from '../../axis/reflect.ts'
import { jobOf } from '../../job/index.ts'
import { analyseLoops } from '../../loops/analyse.ts'
import { designGains } from '../../loops/design/index.ts'
import type { LoopId } from '../../loops/model.ts'
import {
  type AxisPreset,
  axesFor,
  type Checked,
  checkScenario,
  type Edit,
  editScenario,
  type JobId,
  type Scenario,
} from '../../scenario/index.ts'
import { strategiesOn } from '../../strategy/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { axisFigures } from '../actuators.ts'
import { fitAxis, gainsFor, positionBandwidth } from '../fit-axis.ts'
import { loopMargins } from '../loop-margins.ts'
import { capJob } from './cap.ts'
import { gripJob } from './grip.ts'
import { type Answers, type AskFigure, type AskStep, type Edges, given, type NewJob, rounded } from './job.ts'
import { pressJob } from './press.ts'
import { webJob } from './web.ts'

export const NEW_JOBS: Record<JobId, NewJob> = {
  grip: gripJob,
  press: pressJob,
  cap: capJob,
  web: webJob,
}

/** Figures that are asked for as the choices stand. */
export const askedIn = ({ figures }: AskStep, { choices }: Answers): AskFigure[] =>
  figures.filter(({ when }) => !when || choices[when.choice] === when.is)

/** Needed figures of a step that are not given yet. */
export const missingIn = (step: AskStep, answers: Answers): AskFigure[] =>
  askedIn(step, answers).filter(({ id, needed }) => needed && given(answers, id) === undefined)

/** Whether there is all in a step without which there is no such job. */
export function isTold(step: AskStep, answers: Answers): boolean {
  const { choices = [], some } = step
  if (choices.some(({ id }) => answers.choices[id] === undefined) || missingIn(step, answers).length > 0) return false
  if (!some || answers.choices[some.choice] !== some.is) return true
  return step.figures.some(({ id, when }) => when === some && given(answers, id) !== undefined)
}

export const allTold = (job: JobId, answers: Answers): boolean =>
  NEW_JOBS[job].steps.every((step) => isTold(step, answers))

/** The scenario without an axis of its own; what was not told takes the defaults of the format. */
export function workAsked(job: JobId, answers: Answers): Checked {
  const { edits, follows } = NEW_JOBS[job]
  const name = answers.name.trim()
  const blank = checkScenario({ job })
  if (!blank.ok) return blank
  const told = editScenario(blank.scenario, [
    ...(name === '' ? [] : [{ path: 'name', value: name }]),
    ...edits(answers),
  ])
  return told.ok && follows ? editScenario(told.scenario, follows(told.scenario, answers)) : told
}

const NO_EDGES: Edges = { least: null, most: null }

/** Edges of the effort as far as what was told makes any [N or N·m]. */
export function edgesAsked(job: JobId, answers: Answers): Edges {
  const work = workAsked(job, answers)
  return work.ok ? NEW_JOBS[job].edges(work.scenario, answers) : NO_EDGES
}

/** Without an upper edge half as much again as the least, without a lower one half of the most; common practice, no source. */
export function suggestedEffort({ least, most }: Edges): number | null {
  if (least !== null && most !== null) return rounded((least + most) / 2, 3)
  if (least !== null) return rounded(1.5 * least, 3)
  return most === null ? null : rounded(most / 2, 3)
}

export const axisAsked = (job: JobId, { axis }: Answers): AxisPreset | null =>
  axesFor(job).find(({ id }) => id === axis) ?? null

/** Usual bus voltages [V], those of IEC 60038 for direct current among them. */
const VOLTAGES = [48, 60, 72, 96, 110, 220, 325, 560]
/** Share of the speed at the bus voltage that is left for speeding up; common practice, no source. */
const RESERVE = 1.3

/** The whole job with its axis, gains and settings matched; null: the axis is not chosen yet. */
export function jobAsked(job: JobId, answers: Answers): Checked | null {
  const work = workAsked(job, answers)
  if (!work.ok) return work
  const axis = axisAsked(job, answers)
  if (!axis) return null
  const effort = answers.effort ?? suggestedEffort(NEW_JOBS[job].edges(work.scenario, answers))
  const powered = editScenario(work.scenario, voltageFor(job, work.scenario, axis))
  if (!powered.ok) return powered
  const fitted = fitAxis(powered.scenario, axis.actuator, effort ?? undefined)
  if (!fitted.ok || job === 'grip') return fitted
  const calm = editScenario(fitted.scenario, steadied(fitted.scenario))
  if (!calm.ok) return calm
  const placed = editScenario(calm.scenario, NEW_JOBS[job].onAxis?.(calm.scenario, effort) ?? [])
  if (!placed.ok) return placed
  const gained = editScenario(placed.scenario, forceGains(placed.scenario))
  const { lasts } = NEW_JOBS[job]
  if (!gained.ok || !lasts) return gained
  return editScenario(gained.scenario, [{ path: 'run.duration', value: lasts(gained.scenario, effort) }])
}

/** Factors on the bandwidth that the gains were matched for, and on that of the force loop. */
const SLOWER = [1, 0.7, 0.5, 0.35, 0.25, 0.18, 0.12, 0.08, 0.05, 0.03, 0.02]

/** Gains of position and velocity loop at the widest of these bandwidths at which both have margin at every working point. */
function steadied(scenario: Scenario): Edit[] {
  const bandwidth = positionBandwidth(scenario)
  const edits = SLOWER.map((factor) => motionGains(scenario, bandwidth * factor))
  return edits.find((each) => hasMargin(scenario, each, ['position', 'velocity'])) ?? edits[0]!
}

function motionGains(scenario: Scenario, bandwidth: number): Edit[] {
  const { servo, velocity } = gainsFor(scenario, scenario.actuator, bandwidth)
  return [
    ...Object.entries(servo).map(([key, value]) => ({ path: `servo.${key}`, value })),
    ...Object.entries(velocity).map(([key, value]) => ({ path: `${SENSED}.velocity.${key}`, value })),
  ]
}

const SENSED = 'strategies.sensedForce'

function hasMargin(scenario: Scenario, edits: Edit[], loops: LoopId[]): boolean {
  const edited = editScenario(scenario, edits)
  if (!edited.ok) return false
  const rows = finite(() => analyseLoops(edited.scenario, { loops }).loops)
  return (
    rows?.every(
      ({ stable, margins }) => stable && isSound(margins?.phaseMargin ?? null, margins?.peakSensitivity ?? null),
    ) ?? false
  )
}

/** Null where the linear model is not finite. */
function finite<T>(ask: () => T): T | null {
  try {
    return ask()
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** The least usual bus voltage at which the axis gets as fast as the job asks, the highest where none does. */
function voltageFor(job: JobId, scenario: Scenario, { actuator }: AxisPreset): Edit[] {
  const fastest = NEW_JOBS[job].fastest?.(scenario)
  if (fastest === undefined) return []
  const reaches = (busVoltage: number) =>
    axisFigures({ ...scenario, drive: { ...scenario.drive, busVoltage } }, actuator).topSpeed >= RESERVE * fastest
  return [{ path: 'drive.busVoltage', value: VOLTAGES.find(reaches) ?? VOLTAGES.at(-1)! }]
}

/**
 * Gains of the force loop: those that its job has closed forms of, slowed down until they have margin at every working point, else the largest
 * that have it; none where no gain has it, or an axis runs open loop.
 */
function forceGains(scenario: Scenario): Edit[] {
  if (isOpenLoop(scenario)) return []
  const own = NEW_JOBS[scenario.job].forceGains?.(scenario)
  if (!own) return finite(() => designGains(scenario, 'force'))?.[0]?.edits ?? []
  const slower = SLOWER.map((factor) =>
    Object.entries(own).map(([key, gain]) => ({ path: `${SENSED}.${key}`, value: rounded(gain * factor) })),
  )
  return slower.find((edits) => hasMargin(scenario, edits, ['force'])) ?? slower.at(-1)!
}

/** Least phase margin [deg] and highest peak sensitivity of a loop that is sound; common practice, no source. */
const [SOUND_PHASE, SOUND_PEAK] = [30, 2]

const isSound = (phase: number | null, peak: number | null) => (phase ?? 90) >= SOUND_PHASE && (peak ?? 1) <= SOUND_PEAK

/** Strategies of which a loop is unstable or without margin at a working point. */
export const unsound = (scenario: Scenario): StrategyId[] =>
  strategiesOn(jobOf(scenario))
    .map(({ id }) => id)
    .filter((id) => {
      const margins = finite(() => loopMargins(scenario, id))
      return !(margins?.stable && isSound(margins.phaseMargin, margins.peakSensitivity))
    })
