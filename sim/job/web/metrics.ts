/** The figures of a web as people read them: how each is computed and why one may be missing. */
import type { FigureName } from '../../scenario/schema/figures.ts'
import { WEB_FIGURES, type WebFigureId } from '../../scenario/schema/web/figures.ts'
import { DRIVE_FIGURES, UNSETTLED } from '../drive-figures.ts'
import type { Figure } from '../job.ts'
import { topSpeed } from './fill.ts'
import { WEB_METRIC_IDS, type WebEnd, type WebJudgement, type WebMetrics, type WebResult } from './result.ts'
import { tensionWindow, timeConstant } from './window.ts'

interface WebMetric extends Figure<WebJudgement> {
  id: WebFigureId | 'stepError'
}

interface Read extends Omit<WebMetric, 'id' | 'value' | keyof FigureName> {
  /** The figure at the end of a run; NaN or infinite where it does not exist. */
  take(end: WebEnd): number
}

const EARLY = 'The run ended before the time that counts.'
const NEVER = 'The web never had any tension.'

const ifCounted = (take: (end: WebEnd) => number) => (end: WebEnd) =>
  end.load.state.count > 0 ? take(end) : Number.NaN

/** One entry a figure: all that there is to say of it. */
const READ: Record<WebFigureId, Read> = {
  contactTime: {
    note: 'Time from the start of the run to the first tension at the gauge.',
    take: ({ load }) => load.state.touched,
    missing: () => NEVER,
  },
  tautTime: {
    note: 'Time from the start of the run until the tension first reaches the least that is wanted.',
    take: ({ load }) => load.state.taut,
    missing: () => 'The tension never reached the least that is wanted.',
  },
  meanTension: {
    note: 'Mean tension at the gauge over the time that counts, ramps included.',
    take: ifCounted(({ load }) => load.state.mean),
    missing: () => EARLY,
  },
  leastTension: {
    note: 'Least tension in any step of the time that counts, in front of the idlers or behind them.',
    take: ifCounted(({ load }) => load.state.least),
    missing: () => EARLY,
  },
  leastTensionTime: {
    note: 'Time from the start of the run to the least tension.',
    take: ifCounted(({ load }) => load.state.leastTime),
    missing: () => EARLY,
  },
  mostTension: {
    note: 'Highest tension in any step of the run, in front of the idlers or behind them.',
    take: ({ load }) => (load.state.peak > 0 ? load.state.peak : Number.NaN),
    missing: () => NEVER,
  },
  mostTensionTime: {
    note: 'Time from the start of the run to the most tension.',
    take: ({ load }) => load.state.peakTime,
    missing: () => NEVER,
  },
  tensionRipple: {
    note: 'Root mean square of the tension at the gauge about its mean over the time that counts: swing, ramps and drift together.',
    take: ifCounted(({ load }) => Math.sqrt(load.state.squares / load.state.count)),
    missing: () => EARLY,
  },
  settledTension: {
    note: 'Mean tension at the gauge over the last 50 ms of the run, or before a power loss.',
    take: ({ sums }) => (sums.count > 0 ? sums.force : Number.NaN),
    missing: () => UNSETTLED,
  },
  slackMargin: {
    grain: 0.001,
    note: 'Least tension of the time that counts over the least that is wanted, minus 1; below 0 the web went slack.',
    take: ifCounted(({ scenario, load }) => load.state.least / tensionWindow(scenario).least - 1),
    missing: () => EARLY,
    standsFor: ({ metrics }) => (metrics.leastTension === null ? null : Number.POSITIVE_INFINITY),
  },
  stretchMargin: {
    grain: 0.001,
    note: 'Most that is wanted over the highest tension of the run, minus 1; below 0 the web was stretched.',
    take: ({ scenario, load }) => tensionWindow(scenario).most / load.state.peak - 1,
    missing: () => NEVER,
    standsFor: () => Number.POSITIVE_INFINITY,
  },
  breakMargin: {
    grain: 0.001,
    note: 'Tension at break over the highest tension of the run, minus 1.',
    take: ({ scenario, load }) => (tensionWindow(scenario).tears ?? Number.NaN) / load.state.peak - 1,
    missing: ({ metrics }) => (metrics.mostTension === null ? NEVER : 'The web has no tension at break in the file.'),
    standsFor: () => Number.POSITIVE_INFINITY,
  },
  draw: {
    grain: 1e-6,
    note: 'Way of the roll’s rim over the way of the line in the time that counts, minus 1: the lasting difference of speed that stretches what comes.',
    take: ifCounted(({ load }) => load.state.rimWay / load.state.lineWay - 1),
    missing: ({ metrics }) => (metrics.leastTension === null ? EARLY : 'The line stood still in the time that counts.'),
  },
  strain: {
    grain: 1e-6,
    note: 'Highest tension over stiffness, modulus times thickness times width.',
    take: ({ load }) => (load.state.peak > 0 ? load.state.peak / load.stiffness : Number.NaN),
    missing: () => NEVER,
  },
  timeConstant: {
    note: 'Length of the span over the highest speed of the line: how long the tension of a running web takes to follow a change of speed to 63 %.',
    take: ({ scenario }) => timeConstant(scenario, topSpeed(scenario)),
    missing: () => 'The line stands still, where the span is a spring.',
    standsFor: () => Number.POSITIVE_INFINITY,
  },
  rollRadius: {
    grain: 1e-6,
    note: 'Radius of the roll at the end of the run, with what it has wound.',
    take: ({ load }) => load.state.radius,
    missing: () => EARLY,
  },
  rollInertia: {
    note: 'Inertia of roll, shaft and idlers at the end of the run, as the output of the axis carries it.',
    take: ({ load }) => load.state.inertia,
    missing: () => EARLY,
  },
  woundLength: {
    grain: 0.001,
    note: 'Length of web, without pull, that the roll has taken up by the end of the run.',
    take: ({ load }) => load.state.wound,
    missing: () => EARLY,
  },
  rollTorque: {
    note: 'Highest torque of the web on the roll in the time that counts: tension and drag times the radius.',
    take: ifCounted(({ load }) => load.state.torque),
    missing: () => EARLY,
  },
  ...DRIVE_FIGURES,
}

export function webMetrics(end: WebEnd): WebMetrics {
  const figure = (value: number) => (Number.isFinite(value) ? value : null)
  return Object.fromEntries(WEB_METRIC_IDS.map((id) => [id, figure(READ[id].take(end))])) as WebMetrics
}

/** All of them, and the step error. */
export const WEB_METRICS: WebMetric[] = [
  ...WEB_METRIC_IDS.map((id) => ({
    id,
    ...WEB_FIGURES[id],
    ...READ[id],
    value: ({ metrics }: WebResult) => metrics[id],
  })),
  {
    id: 'stepError',
    unit: '',
    shown: '%',
    label: 'Step error',
    note: 'Largest error of a tension by the integration step, twice what half the step changes, as a share of the most tension.',
    value: ({ stepError }) => stepError,
    missing: ({ metrics, events }) =>
      !metrics.mostTension || metrics.meanTension === null || events.unstable !== null
        ? 'It takes a stable run that reaches the time that counts, with some tension.'
        : 'Worked out by runs at finer steps, unless those would take too long.',
  },
]
