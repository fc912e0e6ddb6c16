/** The figures of a closure as people read them: how each is computed and why one may be missing. */
import { CAP_FIGURES, type CapFigureId } from '../../scenario/schema/cap/figures.ts'
import type { FigureName } from '../../scenario/schema/figures.ts'
import { DRIVE_FIGURES, UNSETTLED } from '../drive-figures.ts'
import type { Figure } from '../job.ts'
import { CAP_METRIC_IDS, type CapEnd, type CapJudgement, type CapMetrics, type CapResult } from './result.ts'
import { capIn } from './scenario.ts'
import { restingPreload, torqueOff, torqueWindow } from './window.ts'

interface CapMetric extends Figure<CapJudgement> {
  id: CapFigureId | 'stepError'
}

const UNSTARTED = 'The closure did not come onto the thread.'
const UNMET = 'The closure met neither liner nor jam.'
const started = ({ events }: Pick<CapResult, 'events'>) => events.start !== null
const met = ({ metrics }: Pick<CapResult, 'metrics'>) => metrics.contactTime !== null
const orUnmet = (why: string) => (result: CapResult) => (met(result) ? why : started(result) ? UNMET : UNSTARTED)

interface Read extends Omit<CapMetric, 'id' | 'value' | keyof FigureName> {
  /** The figure at the end of a run; NaN or infinite where it does not exist. */
  take(end: CapEnd): number
}

const ifOn = (take: (end: CapEnd) => number) => (end: CapEnd) =>
  Number.isNaN(end.load.state.startTime) ? Number.NaN : take(end)
const ifMet = (take: (end: CapEnd) => number) => (end: CapEnd) =>
  Number.isNaN(end.load.state.contactTime) ? Number.NaN : take(end)
const settledTorque = ({ sums }: CapEnd) => (sums.count > 0 ? sums.force : Number.NaN)

/** Of the torque window at whichever end is nearer; below 0 the torque lies outside. */
function margin({ scenario, load }: CapEnd): number {
  const { least, most } = torqueWindow(scenario)
  const { applied } = load.state
  const low = least > 0 ? applied / least - 1 : Number.POSITIVE_INFINITY
  const high = most === null ? Number.POSITIVE_INFINITY : most / applied - 1
  return Math.min(low, high)
}

/** One entry a figure: all that there is to say of it. */
const READ: Record<CapFigureId, Read> = {
  contactTime: {
    note: 'Time from the start of the run to first touch of the liner, or of the jam of a closure that was started askew.',
    take: ({ load }) => load.state.contactTime,
    missing: orUnmet(UNMET),
  },
  contactSpeed: {
    note: 'Speed of the closure in the step of that touch.',
    take: ({ load }) => load.state.contactSpeed,
    missing: orUnmet(UNMET),
  },
  capTime: {
    note: 'From first touch of the liner until the torque of the chuck enters, for good, the band of 5 % about its settled value.',
    take: ({ sums }) => sums.gripTime,
    missing: orUnmet('The torque did not stay within 5 % of a settled value.'),
  },
  peakTorque: {
    note: 'Highest torque of the chuck in any step of the run, run-down and the speeding up of the closure included.',
    take: ifOn(({ load }) => load.state.peak),
    missing: () => UNSTARTED,
  },
  peakTorqueTime: {
    note: 'Time from the start of the run to that peak.',
    take: ifOn(({ load }) => load.state.peakTime),
    missing: () => UNSTARTED,
  },
  settledTorque: {
    note: 'Mean torque of the chuck in the settled window: the last 50 ms before power loss or release, else of the run.',
    take: ifOn(settledTorque),
    missing: (result) => (started(result) ? 'The run ended before the torque could settle.' : UNSTARTED),
  },
  overshoot: {
    note: 'Peak torque over the settled one: what the momentum of head and motor, and the reaction of the drive, added on top.',
    take: ifMet((end) => end.load.state.peak - settledTorque(end)),
    missing: orUnmet(UNSETTLED),
  },
  applicationTorque: {
    note: 'Highest torque of the thread in any step: what a torque meter that holds the jar would show while the closure is turned on (ASTM D3198, withdrawn 2016, in its sense of the word).',
    take: ifOn(({ load }) => load.state.applied),
    missing: () => UNSTARTED,
  },
  torqueMargin: {
    grain: 0.001,
    note: 'Application torque over its least, or its most over it, whichever is closer, minus 1; below 0 it lies outside.',
    take: ifMet(margin),
    missing: orUnmet('The window has no torque to be held against.'),
    standsFor: (result) => (met(result) ? Number.POSITIVE_INFINITY : null),
  },
  stripMargin: {
    grain: 0.001,
    note: 'Stripping torque of the thread over the application torque, minus 1.',
    take: ifMet(({ scenario, load }) => (torqueWindow(scenario).strip ?? Infinity) / load.state.applied - 1),
    missing: orUnmet('The closure has no stripping torque in the file.'),
    standsFor: (result) => (met(result) ? Number.POSITIVE_INFINITY : null),
  },
  turns: {
    note: 'Angle of the closure from the start of the thread to the end of the run.',
    take: ifOn(({ load }) => load.state.angle - load.thread.start),
    missing: () => UNSTARTED,
  },
  seatAngle: {
    note: 'Angle of the closure from first touch of liner or jam to the end of the run.',
    take: ifMet(({ load }) => load.state.angle - load.state.contactAngle),
    missing: orUnmet(UNMET),
  },
  preload: {
    note: 'Force of the liner on the rim at the end of the run.',
    take: ifMet(({ load }) => load.thread.state.preload),
    missing: orUnmet(UNMET),
  },
  removalTorque: {
    note: 'Predicted from the preload at the end of the run, thread and liner turning the other way from rest, the head gone; trade guides find 40 to 80 % of the application torque at once, so measure it.',
    take: ifMet(({ scenario, load }) => torqueOff(scenario, load.thread.state.preload)),
    missing: orUnmet(UNMET),
  },
  removalAfter: {
    note: 'Predicted as that at once, from the preload that is left when the liner of the file has crept for good, a little more than at once where the closure turned back last; a guide finds 40 to 60 % of the application torque after a day, and no closed form replaces the test.',
    take: ifMet(({ scenario, load }) => torqueOff(scenario, restingPreload(scenario, load.thread.state.squeeze))),
    missing: orUnmet(UNMET),
  },
  feed: {
    grain: 1e-6,
    note: 'Way of the closure down its thread by the lead, which the head has to follow.',
    take: ifOn(({ scenario, load }) => (capIn(scenario).closure.lead * (load.state.angle - load.thread.start)) / TURN),
    missing: () => UNSTARTED,
  },
  feedSpeed: {
    note: 'Fastest way down by the lead in any step on the thread: as fast the head has to follow.',
    take: ifOn(({ scenario, load }) => (capIn(scenario).closure.lead * load.state.fastest) / TURN),
    missing: () => UNSTARTED,
  },
  work: {
    note: 'Work of the chuck on the closure over the whole run: torque times angle, summed step by step.',
    take: ifOn(({ load }) => load.state.work),
    missing: () => UNSTARTED,
  },
  ...DRIVE_FIGURES,
  reversals: {
    ...DRIVE_FIGURES.reversals,
    note: 'Changes of direction of the motor side for each second of the settled window; speeds below 0.0001 rad/s count as standing.',
  },
  torqueRipple: {
    note: 'Root mean square of the torque of the chuck about its mean in the settled window.',
    take: ifMet(({ sums }) => Math.sqrt(sums.forceSquares / sums.count)),
    missing: orUnmet(UNSETTLED),
  },
  headTravel: {
    note: 'Angle of the chuck to the end of the settled window.',
    take: ({ sums }) => sums.travel,
    missing: () => UNSETTLED,
  },
}

const TURN = 2 * Math.PI

export function capMetrics(end: CapEnd): CapMetrics {
  const figure = (value: number) => (Number.isFinite(value) ? value : null)
  return Object.fromEntries(CAP_METRIC_IDS.map((id) => [id, figure(READ[id].take(end))])) as CapMetrics
}

/** All of them, and the step error. */
export const CAP_METRICS: CapMetric[] = [
  ...CAP_METRIC_IDS.map((id) => ({
    id,
    ...CAP_FIGURES[id],
    ...READ[id],
    value: ({ metrics }: CapResult) => metrics[id],
  })),
  {
    id: 'stepError',
    unit: '',
    shown: '%',
    label: 'Step error',
    note: 'Largest error by the integration step: twice what half the step changes, of torques and preload as a share of themselves, of a margin as a share of the ratio that it is over one.',
    value: ({ stepError }) => stepError,
    missing: ({ metrics, events }) =>
      !metrics.peakTorque || !metrics.applicationTorque || events.unstable !== null
        ? 'It takes a stable run of a closure that comes onto its thread.'
        : 'Worked out by runs at finer steps, unless those would take too long.',
  },
]
