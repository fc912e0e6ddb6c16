/** The figures of a run as cards and tables show them: what each is called, its unit, and why one may be missing. */
import type { GripResult, Scenario } from '../../../sim/index.ts'
import type { Quantity } from '../../ui/units.ts'

export interface Figure {
  id: string
  label: string
  quantity: Quantity
  /** Finest step worth reading [SI]; the figure is rounded to it. */
  grain?: number
  value(result: GripResult): number | null
  /** Why there is none, one sentence. */
  missing(result: GripResult, scenario: Scenario): string
}

const UNTOUCHED = 'The jaws did not touch the part.'
const touched = ({ metrics }: GripResult) => metrics.contactTime !== null

export const FIGURES: Figure[] = [
  {
    id: 'peakForce',
    label: 'Peak force',
    quantity: 'force',
    value: ({ metrics }) => metrics.peakForce,
    missing: () => UNTOUCHED,
  },
  {
    id: 'settledForce',
    label: 'Settled force',
    quantity: 'force',
    value: ({ metrics }) => metrics.settledForce,
    missing: (result) => (touched(result) ? 'The run ended before the force could settle.' : UNTOUCHED),
  },
  {
    id: 'damageMargin',
    label: 'Damage margin',
    quantity: 'ratio',
    grain: 0.001,
    value: ({ metrics }) => metrics.damageMargin,
    missing: (_, { part }) =>
      (part.markForce ?? part.yieldForce ?? part.crackForce) === undefined
        ? 'The part has no damage limit.'
        : UNTOUCHED,
  },
  {
    id: 'holdMargin',
    label: 'Hold margin',
    quantity: 'ratio',
    grain: 0.001,
    value: ({ metrics }) => metrics.holdMargin,
    missing: (result) =>
      touched(result) ? 'The run ended before the support was taken away, or nothing pulls on the part.' : UNTOUCHED,
  },
  {
    id: 'gripTime',
    label: 'Grip time',
    quantity: 'shortTime',
    value: ({ metrics }) => metrics.gripTime,
    missing: (result) => (touched(result) ? 'The force did not stay within 5 % of a settled value.' : UNTOUCHED),
  },
  {
    id: 'slipDistance',
    label: 'Slip',
    quantity: 'length',
    value: ({ metrics }) => metrics.slipDistance,
    missing: () => UNTOUCHED,
  },
  {
    id: 'settledCurrent',
    label: 'Settled current',
    quantity: 'current',
    value: ({ metrics }) => metrics.settledCurrent,
    missing: () => 'The run ended before the current could settle.',
  },
  {
    id: 'windingTemperature',
    label: 'Winding, highest',
    quantity: 'temperature',
    value: ({ metrics }) => metrics.windingTemperature,
    missing: () => 'The run ended before its first sample.',
  },
  {
    id: 'stepError',
    label: 'Step error',
    quantity: 'ratio',
    value: ({ stepError }) => stepError,
    missing: () => 'Worked out at half the step as soon as the bench is at rest.',
  },
]
