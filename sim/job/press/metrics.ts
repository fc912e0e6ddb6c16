/** The figures of a pressed joint as people read them: how each is computed and why one may be missing. */
import type { FigureName } from '../../scenario/schema/figures.ts'
import { PRESS_FIGURES, type PressFigureId } from '../../scenario/schema/press/figures.ts'
import { DRIVE_FIGURES, UNSETTLED } from '../drive-figures.ts'
import type { Figure } from '../job.ts'
import { fitOf, forceLimit, jointPressure } from './fill.ts'
import { boreHoop, yieldPressure } from './lame.ts'
import { PRESS_METRIC_IDS, type PressEnd, type PressJudgement, type PressMetrics, type PressResult } from './result.ts'
import { pressIn } from './scenario.ts'
import { pushOutForce } from './window.ts'

interface PressMetric extends Figure<PressJudgement> {
  id: PressFigureId | 'stepError'
}

const UNTOUCHED = 'The bushing did not touch the bore.'
const touched = ({ metrics }: Pick<PressResult, 'metrics'>) => metrics.contactTime !== null
const orUntouched = (why: string) => (result: PressResult) => (touched(result) ? why : UNTOUCHED)

interface Read extends Omit<PressMetric, 'id' | 'value' | keyof FigureName> {
  /** The figure at the end of a run; NaN or infinite where it does not exist. */
  take(end: PressEnd): number
}

const isTouched = ({ load }: PressEnd) => !Number.isNaN(load.state.contactTime)
const ifTouched = (take: (end: PressEnd) => number) => (end: PressEnd) => (isTouched(end) ? take(end) : Number.NaN)

/** One entry a figure: all that there is to say of it. */
const READ: Record<PressFigureId, Read> = {
  contactTime: {
    note: 'Time from the start of the run to the first force between ram and bushing.',
    take: ({ load }) => load.state.contactTime,
    missing: () => UNTOUCHED,
  },
  contactSpeed: {
    note: 'Speed of the ram in the step of its first touch.',
    take: ({ load }) => load.state.contactSpeed,
    missing: () => UNTOUCHED,
  },
  pressTime: {
    note: 'From first touch until the force enters, for good, the band of 5 % about the settled force.',
    take: ({ sums }) => sums.gripTime,
    missing: orUntouched('The force did not stay within 5 % of a settled value.'),
  },
  peakForce: {
    note: 'Highest force of the ram in any step of the run.',
    take: ifTouched(({ load }) => load.state.peak),
    missing: () => UNTOUCHED,
  },
  peakForceTime: {
    note: 'Time from the start of the run to the peak force.',
    take: ({ load }) => load.state.peakTime,
    missing: () => UNTOUCHED,
  },
  settledForce: {
    note: 'Mean force of the ram in the settled window: the last 50 ms before a move of the arm, power loss or release, else of the run.',
    take: ifTouched(({ sums }) => (sums.count > 0 ? sums.force : Number.NaN)),
    missing: orUntouched('The run ended before the force could settle.'),
  },
  seatForce: {
    note: 'Highest force of the ram since the bushing met the shoulder.',
    take: ({ load }) => load.state.seatPeak,
    missing: orUntouched('The bushing did not meet a shoulder.'),
  },
  depth: {
    grain: 1e-6,
    note: 'Depth of the bushing at the end of the run, from where its chamfer first touched the bore.',
    take: ifTouched(({ load }) => load.state.depth),
    missing: () => UNTOUCHED,
  },
  springBack: {
    grain: 1e-6,
    note: 'Travel of the ram since first touch beyond the depth of the bushing, in the middle of the settled force: settled force over the stiffness of frame and ram.',
    take: ifTouched(({ scenario, sums }) =>
      sums.count > 0 ? sums.force / pressIn(scenario).ram.stiffness : Number.NaN,
    ),
    missing: orUntouched(UNSETTLED),
  },
  bandMargin: {
    grain: 0.001,
    note: 'Least ratio, over every depth that the bushing reached first, of the force to the lower end of the band and of its upper end to the force, minus 1; below 0 the force has left the band.',
    take: ifTouched(({ load }) => load.band.state.closest - 1),
    missing: orUntouched('There is no band, or the bushing did not reach it.'),
    standsFor: (result) => (touched(result) ? Number.POSITIVE_INFINITY : null),
  },
  forceMargin: {
    grain: 0.001,
    note: 'Least force limit of joint and bushing over the peak force, minus 1.',
    take: ifTouched(({ scenario, load }) => forceLimit(scenario) / load.state.peak - 1),
    missing: orUntouched('Neither joint nor bushing has a force limit.'),
    standsFor: (result) => (touched(result) ? Number.POSITIVE_INFINITY : null),
  },
  tiltForce: {
    note: 'Most of the force on the way in that was there for the tilt alone, as its ends press on opposite sides.',
    take: ifTouched(({ load }) => load.state.tilted),
    missing: () => UNTOUCHED,
  },
  work: {
    note: 'Work of the ram on the bushing over the whole run: force times way, summed step by step.',
    take: ifTouched(({ load }) => load.state.work),
    missing: () => UNTOUCHED,
  },
  jointPressure: {
    note: 'Pressure between bushing and bore by Lamé’s thick-walled cylinders, for the interference of this bushing.',
    take: ({ scenario }) => jointPressure(scenario),
    missing: () => UNTOUCHED,
  },
  boreStress: {
    note: 'Hoop stress in the wall of the bore at the joint, under that pressure.',
    take: ({ scenario }) => boreHoop(fitOf(scenario), jointPressure(scenario)),
    missing: () => UNTOUCHED,
  },
  yieldMargin: {
    grain: 0.001,
    note: 'Pressure at which the wall begins to flow over the pressure of the joint, minus 1; below 0 the wall flows and the true pressure is lower.',
    take: ({ scenario }) =>
      yieldPressure(fitOf(scenario), pressIn(scenario).bore.yieldStress ?? Infinity) / jointPressure(scenario) - 1,
    missing: () => 'The bore has no yield stress in the file, or there is no pressure.',
    standsFor: () => Number.POSITIVE_INFINITY,
  },
  holdingForce: {
    note: 'Force that would start to push the bushing out from where it ended: friction at rest times pressure times the engaged face.',
    take: ifTouched(({ scenario, load }) => pushOutForce(scenario, load.state.depth)),
    missing: () => UNTOUCHED,
  },
  ...DRIVE_FIGURES,
  forceRipple: {
    note: 'Root mean square of the force about its mean in the settled window.',
    take: ifTouched(({ sums }) => Math.sqrt(sums.forceSquares / sums.count)),
    missing: orUntouched(UNSETTLED),
  },
  ramTravel: {
    note: 'Travel of the ram to the end of the settled window.',
    take: ({ sums }) => sums.travel,
    missing: () => UNSETTLED,
  },
}

export function pressMetrics(end: PressEnd): PressMetrics {
  const figure = (value: number) => (Number.isFinite(value) ? value : null)
  return Object.fromEntries(PRESS_METRIC_IDS.map((id) => [id, figure(READ[id].take(end))])) as PressMetrics
}

/** All of them, and the step error. */
export const PRESS_METRICS: PressMetric[] = [
  ...PRESS_METRIC_IDS.map((id) => ({
    id,
    ...PRESS_FIGURES[id],
    ...READ[id],
    value: ({ metrics }: PressResult) => metrics[id],
  })),
  {
    id: 'stepError',
    unit: '',
    shown: '%',
    label: 'Step error',
    note: 'Largest error by the integration step: twice what half the step changes, of forces and depth as a share of themselves, of a margin as a share of the ratio that it is over one.',
    value: ({ stepError }) => stepError,
    missing: ({ metrics, events }) =>
      !metrics.peakForce || !metrics.settledForce || events.unstable !== null
        ? 'It takes a stable run with a peak and a settled force.'
        : 'Worked out by runs at finer steps, unless those would take too long.',
  },
]
