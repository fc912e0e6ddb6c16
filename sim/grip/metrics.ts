/**
 * The metrics as people read them: what each is called, its unit, how it is computed and why one may be missing. Bench, report
 * and command line all take them from here.
 */
import type { Scenario } from '../scenario/index.ts'
import type { GripResult, Metrics } from './result.ts'

export interface Metric {
  id: keyof Metrics | 'stepError'
  label: string
  /** SI unit, and the unit in which it is read; left out where they are the same. */
  unit: string
  shown?: string
  /** Finest step worth reading [SI]; the figure is rounded to it. */
  grain?: number
  /** How it is computed, one sentence; its quantities as `textIn` reads them. */
  note: string
  value(result: GripResult): number | null
  /** Why there is none, one sentence. */
  missing(result: GripResult, scenario: Scenario): string
}

const UNTOUCHED = 'The jaws did not touch the part.'
const UNSETTLED = 'The run ended before the settled window.'
const UNMOVED = 'The run has no sample in an arm move.'
const touched = ({ metrics }: GripResult) => metrics.contactTime !== null
const orUntouched = (why: string) => (result: GripResult) => (touched(result) ? why : UNTOUCHED)

const force = { unit: 'N' }
const current = { unit: 'A' }
const time = { unit: 's', shown: 'ms' }
const length = { unit: 'm', shown: 'mm' }
const share = { unit: '', shown: '%' }

type Read = Omit<Metric, 'id' | 'value'>

const READ: Record<keyof Metrics, Read> = {
  contactTime: {
    ...time,
    label: 'First touch',
    note: 'Time from the start of the run to the first force at either contact.',
    missing: () => UNTOUCHED,
  },
  contactSpeed: {
    ...{ unit: 'm/s', shown: 'mm/s' },
    label: 'Speed at touch',
    note: 'Speed of the jaw in the step of its first touch.',
    missing: () => UNTOUCHED,
  },
  gripTime: {
    ...time,
    label: 'Grip time',
    note: 'From first touch until the mean force of the contacts enters, for good, the band of 5 % about the settled force.',
    missing: orUntouched('The force did not stay within 5 % of a settled value.'),
  },
  peakForce: {
    ...force,
    label: 'Peak force',
    note: 'Highest force at either contact in any step of the run; of a broken part the force that broke it.',
    missing: () => UNTOUCHED,
  },
  peakForceTime: {
    ...time,
    label: 'Time of the peak',
    note: 'Time from the start of the run to the peak force.',
    missing: () => UNTOUCHED,
  },
  settledForce: {
    ...force,
    label: 'Settled force',
    note: 'Mean force of the contacts in the settled window: the last 50 ms before the first arm move, lift, power loss or release, else of the run.',
    missing: orUntouched('The run ended before the force could settle.'),
  },
  minForceInMove: {
    ...force,
    label: 'Least force in a move',
    note: 'Lowest force at either contact while the arm moves.',
    missing: () => UNMOVED,
  },
  maxForceInMove: {
    ...force,
    label: 'Most force in a move',
    note: 'Highest force at either contact while the arm moves.',
    missing: () => UNMOVED,
  },
  requiredForce: {
    ...force,
    label: 'Force needed',
    note: 'Least force at one contact that holds the part at the worst instant after the lift: weight and inertia over the friction of two contacts, or what keeps both contacts closed.',
    missing: () => 'Nothing pulls on the part, or the run ended before its support was taken away.',
  },
  holdMargin: {
    ...share,
    grain: 0.001,
    label: 'Hold margin',
    note: 'Least ratio, over the time after the lift, of the pull that friction can carry to the pull there is, minus 1; below 0 the part slides.',
    missing: orUntouched('The run ended before the support was taken away, or nothing pulls on the part.'),
  },
  damageMargin: {
    ...share,
    grain: 0.001,
    label: 'Damage margin',
    note: 'Least damage limit of the part over the peak force, minus 1; below 0 the part is damaged.',
    missing: (_, { part }) =>
      (part.markForce ?? part.yieldForce ?? part.crackForce) === undefined
        ? 'The part has no damage limit.'
        : UNTOUCHED,
  },
  slipDistance: {
    ...length,
    label: 'Slip',
    note: 'Distance that the part slid in the pads over the whole run, without the give of the pads before they slide.',
    missing: () => UNTOUCHED,
  },
  seenWidth: {
    ...length,
    label: 'Width seen',
    note: 'Gap between the pads at first touch, as the jaw’s own travel tells it.',
    missing: () => UNTOUCHED,
  },
  seenStiffness: {
    ...{ unit: 'N/m', shown: 'N/mm' },
    label: 'Stiffness seen',
    note: 'Settled force over the closing of the gap since first touch: part and pads in series.',
    missing: orUntouched('It takes a settled force.'),
  },
  settledCurrent: {
    ...current,
    label: 'Settled current',
    note: 'Mean motor current in the settled window.',
    missing: () => 'The run ended before the current could settle.',
  },
  peakCurrent: {
    ...current,
    label: 'Peak current',
    note: 'Largest size of the motor current at any sample of the current loop.',
    missing: () => 'The run ended before its first sample.',
  },
  rmsCurrent: {
    ...current,
    label: 'Rms current',
    note: 'Root of the mean square of the motor current over the run.',
    missing: () => 'The run ended before its first sample.',
  },
  windingTemperature: {
    ...{ unit: '°C' },
    label: 'Winding, highest',
    note: 'Highest temperature of the winding in the run, from copper losses through winding and housing.',
    missing: () => 'The run ended before its first sample.',
  },
  forceRipple: {
    ...force,
    label: 'Force ripple, rms',
    note: 'Root mean square of the force about its mean in the settled window.',
    missing: orUntouched(UNSETTLED),
  },
  reversals: {
    ...{ unit: '1/s' },
    label: 'Reversals',
    note: 'Changes of direction of the motor side for each second of the settled window; speeds below {0.0001 m/s|mm/s} count as standing.',
    missing: () => UNSETTLED,
  },
  lostCycles: {
    ...{ unit: '' },
    label: 'Cycles lost',
    note: 'Electrical cycles by which the rotor of a step motor in open loop lags its field at the end of the settled window.',
    missing: ({ metrics }) => (metrics.jawTravel === null ? UNSETTLED : 'In closed loop none can be lost.'),
  },
  jawTravel: {
    ...length,
    label: 'Jaw travel',
    note: 'Travel of a jaw from its opening to the end of the settled window.',
    missing: () => UNSETTLED,
  },
}

/** In the order of tables: the grip from first touch to the drive, then the step error. */
export const METRICS: Metric[] = [
  ...(Object.keys(READ) as (keyof Metrics)[]).map((id) => ({
    id,
    ...READ[id],
    value: ({ metrics }: GripResult) => metrics[id],
  })),
  {
    ...share,
    id: 'stepError',
    label: 'Step error',
    note: 'Larger relative change of peak and settled force when the integration step is halved.',
    value: ({ stepError }) => stepError,
    missing: (result) =>
      result.metrics.peakForce && result.metrics.settledForce && result.events.unstable === null
        ? 'Worked out by a second run at half the step as soon as the bench is at rest.'
        : 'It takes a stable run with a peak and a settled force.',
  },
]
