/** The metrics as people read them: what each is called, its unit, how it is computed and why one may be missing. */
import { FIGURES, type FigureName } from '../../scenario/schema/figures.ts'
import { DRIVE_FIGURES, UNSETTLED } from '../drive-figures.ts'
import type { Figure } from '../job.ts'
import { contactsOf } from './geometry.ts'
import { type GripEnd, type GripJudgement, type GripResult, METRIC_IDS, type MetricId, type Metrics } from './result.ts'
import { damageLimit } from './window.ts'

export interface Metric extends Figure<GripJudgement> {
  id: MetricId | 'stepError'
}

const UNTOUCHED = 'The jaws did not touch the part.'
const UNMOVED = 'The run has no sample in an arm move.'
const touched = ({ metrics }: Pick<GripResult, 'metrics'>) => metrics.contactTime !== null
const orUntouched = (why: string) => (result: GripResult) => (touched(result) ? why : UNTOUCHED)

interface Read extends Omit<Metric, 'id' | 'value' | keyof FigureName> {
  /** The figure at the end of a run; NaN or infinite where it does not exist. */
  take(end: GripEnd): number
}

const isTouched = ({ load }: GripEnd) => !Number.isNaN(load.state.contactTime)

const settledForce = (end: GripEnd) => (isTouched(end) && end.sums.count > 0 ? end.sums.force : Number.NaN)

function seenStiffness(end: GripEnd): number {
  const settled = settledForce(end)
  const closed = contactsOf(end.scenario) * (end.sums.travel - end.load.state.contactTravel)
  return settled > 0 ? settled / closed : Number.NaN
}

/** One entry a figure: all that there is to say of it. */
const READ: Record<MetricId, Read> = {
  contactTime: {
    note: 'Time from the start of the run to the first force at either contact.',
    take: ({ load }) => load.state.contactTime,
    missing: () => UNTOUCHED,
  },
  contactSpeed: {
    note: 'Speed of the jaw in the step of its first touch.',
    take: ({ load }) => load.state.contactSpeed,
    missing: () => UNTOUCHED,
  },
  gripTime: {
    note: 'From first touch until the mean force of the contacts enters, for good, the band of 5 % about the settled force.',
    take: ({ sums }) => sums.gripTime,
    missing: orUntouched('The force did not stay within 5 % of a settled value.'),
  },
  peakForce: {
    note: 'Highest force at either contact in any step of the run; of a broken part the force that broke it.',
    take: (end) => (isTouched(end) ? end.load.state.peak : Number.NaN),
    missing: () => UNTOUCHED,
  },
  peakForceTime: {
    note: 'Time from the start of the run to the peak force.',
    take: ({ load }) => load.state.peakTime,
    missing: () => UNTOUCHED,
  },
  settledForce: {
    note: 'Mean force of the contacts in the settled window: the last 50 ms before the first arm move, lift, power loss or release, else of the run.',
    take: settledForce,
    missing: orUntouched('The run ended before the force could settle.'),
  },
  minForceInMove: {
    note: 'Lowest force at either contact while the arm moves.',
    take: ({ load }) => load.sums.least,
    missing: () => UNMOVED,
  },
  maxForceInMove: {
    note: 'Highest force at either contact while the arm moves.',
    take: ({ load }) => load.sums.most,
    missing: () => UNMOVED,
  },
  requiredForce: {
    note: 'Least force at one contact that holds the part at the worst instant after the lift: weight and inertia over the friction of two contacts, or what keeps both contacts closed.',
    take: ({ load }) => (load.sums.required > 0 ? load.sums.required : Number.NaN),
    missing: () => 'Nothing pulls on the part, or the run ended before its support was taken away.',
  },
  holdMargin: {
    grain: 0.001,
    note: 'Least ratio, over the time after the lift, of what friction can carry to what the pads carry, turning included, and of both contacts’ force to what pushes the part from one to the other, minus 1; at the end also of what they can hold to what then pulls on the part. At 0 a contact opens; below 0 the part slides or comes loose, and the figure is that of what pulls on it.',
    take: (end) => (isTouched(end) ? end.load.margin() : Number.NaN),
    missing: orUntouched('The run ended before the support was taken away, or nothing pulls on the part.'),
    standsFor: (result) => (touched(result) && result.events.lift !== null ? Number.POSITIVE_INFINITY : null),
  },
  damageMargin: {
    grain: 0.001,
    note: 'Least damage limit of the part over the peak force, minus 1; below 0 the part is damaged.',
    take: (end) => (isTouched(end) ? damageLimit(end.scenario) / end.load.state.peak - 1 : Number.NaN),
    missing: (_, { part }) =>
      (part.markForce ?? part.yieldForce ?? part.crackForce) === undefined
        ? 'The part has no damage limit.'
        : UNTOUCHED,
    standsFor: (result) => (touched(result) ? Number.POSITIVE_INFINITY : null),
  },
  slipDistance: {
    note: 'Way that the part slid in the pads over the whole run, turning at the lever of the pads included, without the give of the pads before they slide.',
    take: (end) => (isTouched(end) ? end.load.slip.state.distance : Number.NaN),
    missing: () => UNTOUCHED,
  },
  rotation: {
    note: 'Largest angle by which the part has turned about the grip axis; a part held at its centre of mass does not turn.',
    take: (end) => (isTouched(end) ? end.load.slip.state.mostTurn : Number.NaN),
    missing: () => UNTOUCHED,
  },
  seenWidth: {
    note: 'Gap between the pads at first touch, as the jaw’s own travel tells it.',
    take: ({ scenario, load }) => scenario.jaws.opening - contactsOf(scenario) * load.state.contactTravel,
    missing: () => UNTOUCHED,
  },
  seenStiffness: {
    note: 'Settled force over the closing of the gap since first touch: part and pads in series.',
    take: seenStiffness,
    missing: orUntouched('It takes a settled force.'),
  },
  ...DRIVE_FIGURES,
  forceRipple: {
    note: 'Root mean square of the force about its mean in the settled window.',
    take: (end) => (isTouched(end) ? Math.sqrt(end.sums.forceSquares / end.sums.count) : Number.NaN),
    missing: orUntouched(UNSETTLED),
  },
  jawTravel: {
    note: 'Travel of a jaw from its opening to the end of the settled window.',
    take: ({ sums }) => sums.travel,
    missing: () => UNSETTLED,
  },
}

export function metricsOf(end: GripEnd): Metrics {
  const figure = (value: number) => (Number.isFinite(value) ? value : null)
  return Object.fromEntries(METRIC_IDS.map((id) => [id, figure(READ[id].take(end))])) as Metrics
}

/** All of them, and the step error. */
export const METRICS: Metric[] = [
  ...METRIC_IDS.map((id) => ({ id, ...FIGURES[id], ...READ[id], value: ({ metrics }: GripResult) => metrics[id] })),
  {
    id: 'stepError',
    unit: '',
    shown: '%',
    label: 'Step error',
    note: 'Largest error by the integration step: twice what half the step changes, of peak and settled force and slip as a share of themselves, of a margin as a share of the ratio that it is over one. With noise, or steps of measurement, 1.5 times what a third of the step changes counts too, and as chance has a hand in both, it tells the size of the error and is no bound.',
    value: ({ stepError }) => stepError,
    missing({ metrics, events, stepErrors }) {
      if (!metrics.peakForce || !metrics.settledForce || events.unstable !== null)
        return 'It takes a stable run with a peak and a settled force.'
      return stepErrors === null
        ? 'Worked out by runs at finer steps as soon as the bench is at rest.'
        : 'No finer step gave a stable run, or it would have taken too long.'
    },
  },
]
