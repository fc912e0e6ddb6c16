/** The figures of a loop, and in a sentence why one does not exist. */
import type { LoopAnalysis } from '../../../sim/index.ts'

export interface Column {
  id: string
  label: string
  unit: string
  note: string
  value(analysis: LoopAnalysis): number | null
  /** A frequency: it is told in both units. */
  frequency?: boolean
  /** Why a stable loop with a crossover has no such figure. */
  absent: string
}

export const COLUMNS: Column[] = [
  {
    id: 'crossover',
    label: 'Crossover',
    unit: 'rad/s',
    note: 'Highest frequency at which the loop gain falls through 1.',
    value: ({ crossover }) => crossover,
    frequency: true,
    absent: 'The loop gain stays below 1.',
  },
  {
    id: 'phase-margin',
    label: 'Phase margin',
    unit: '°',
    note: 'Phase that the loop may lose at a crossover before it oscillates.',
    value: ({ margins }) => margins?.phaseMargin ?? null,
    absent: 'The loop gain stays below 1.',
  },
  {
    id: 'delay-margin',
    label: 'Delay margin',
    unit: 'ms',
    note: 'Dead time that the loop bears on top of what it has.',
    value: ({ margins }) => (margins?.delayMargin == null ? null : margins.delayMargin * 1e3),
    absent: 'The loop gain stays below 1.',
  },
  {
    id: 'gain-margin',
    label: 'Gain margin',
    unit: 'dB',
    note: 'Factor by which the gain may rise before the loop oscillates.',
    value: ({ margins }) => margins?.gainMargin ?? null,
    absent: 'The gain may rise without bound.',
  },
  {
    id: 'modulus-margin',
    label: 'Modulus margin',
    unit: '',
    note: 'Least distance of the Nyquist curve from −1: the radius of the circle that it stays out of.',
    value: ({ margins }) => margins?.modulusMargin ?? null,
    absent: '',
  },
  {
    id: 'peak-sensitivity',
    label: 'Peak sensitivity',
    unit: '',
    note: 'Largest |1/(1 + L)|: how much the loop makes disturbances worse at its worst frequency.',
    value: ({ margins }) => margins?.peakSensitivity ?? null,
    absent: '',
  },
  {
    id: 'bandwidth',
    label: 'Bandwidth',
    unit: 'rad/s',
    note: 'Up to it the closed loop follows its set point: here it first falls through −3 dB.',
    value: ({ margins }) => margins?.bandwidth ?? null,
    frequency: true,
    absent: 'The closed loop does not fall through −3 dB.',
  },
  {
    id: 'peaking',
    label: 'Peaking',
    unit: 'dB',
    note: 'Peak of the closed loop over 1.',
    value: ({ margins, crossover }) => (crossover === null ? null : (margins?.peaking ?? null)),
    absent: '',
  },
]

const NO_BANDWIDTH = {
  '': '',
  below: 'The closed loop lies below −3 dB at the lowest frequencies already.',
  above: 'The closed loop does not fall through −3 dB below half the sample rate.',
}

/** '' where the figure exists. */
export function whyAbsent(column: Column, analysis: LoopAnalysis): string {
  if (column.value(analysis) !== null) return ''
  if (!analysis.stable)
    return `The loop is ${analysis.stability === 'border' ? 'on the border of stability' : 'unstable'}: its distances from −1 mean nothing.`
  if (column.id === 'bandwidth') return NO_BANDWIDTH[analysis.margins!.noBandwidth]
  if (analysis.crossover === null) return 'The loop gain does not fall through 1: there is no crossover.'
  return column.absent
}
