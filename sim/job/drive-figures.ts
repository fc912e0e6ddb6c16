/** Figures of motor and drive, which are taken alike whatever the axis works on. */
import type { Scenario } from '../scenario/index.ts'
import type { FigureName } from '../scenario/schema/figures.ts'
import type { Figure } from './job.ts'
import { holdTime } from './ratings.ts'
import type { Sums } from './sums.ts'

export const UNSETTLED = 'The run ended before the settled window.'

/** A run as its drive saw it; `period` of the current loop [s]. */
interface DriveEnd {
  scenario: Scenario
  sums: Sums
  period: number
}

interface Read extends Omit<Figure, 'id' | 'value' | keyof FigureName> {
  /** The figure at the end of a run; NaN or infinite where it does not exist. */
  take(end: DriveEnd): number
}

export const DRIVE_FIGURES = {
  settledCurrent: {
    note: 'Mean motor current in the settled window.',
    take: ({ sums }) => (sums.count > 0 ? sums.current : Number.NaN),
    missing: () => 'The run ended before the current could settle.',
  },
  peakCurrent: {
    note: 'Largest size of the motor current at any sample of the current loop.',
    take: ({ sums }) => (sums.samples > 0 ? sums.peakCurrent : Number.NaN),
    missing: () => 'The run ended before its first sample.',
  },
  rmsCurrent: {
    note: 'Root of the mean square of the motor current over the run.',
    take: ({ sums }) => Math.sqrt(sums.squares / sums.samples),
    missing: () => 'The run ended before its first sample.',
  },
  busPower: {
    note: 'Highest power that the winding takes from the bus, evened out over {0.01 s|ms} as by the capacitors of its supply; losses of the amplifier come on top.',
    take: ({ sums }) => (sums.samples > 0 ? sums.peakPower : Number.NaN),
    missing: () => 'The run ended before its first sample.',
  },
  windingTemperature: {
    note: 'Highest temperature of the winding in the run, from copper losses through winding and housing.',
    take: ({ sums }) => sums.hottest,
    missing: () => 'The run ended before its first sample.',
  },
  holdTime: {
    note: 'From the end of the settled window until the winding reaches its limit, if the current stays as it is there: copper loss through winding and housing, from the temperatures that they have.',
    take: ({ scenario, sums }) => holdTime(scenario, sums),
    missing: ({ metrics }) =>
      metrics.settledCurrent === null
        ? 'The run ended before the current could settle.'
        : 'For ever: at this current the winding stays below its limit.',
    standsFor: ({ metrics }) => (metrics.settledCurrent === null ? null : Number.POSITIVE_INFINITY),
  },
  reversals: {
    note: 'Changes of direction of the motor side for each second of the settled window; speeds below {0.0001 m/s|mm/s} count as standing.',
    take: ({ sums, period }) => sums.reversals / (sums.count * period),
    missing: () => UNSETTLED,
  },
  lostCycles: {
    note: 'Electrical cycles by which the rotor of a step motor in open loop lags its field at the end of the settled window.',
    take: ({ sums }) => Math.floor(sums.lag + 0.5),
    missing: ({ metrics }) => (metrics.settledCurrent === null ? UNSETTLED : 'In closed loop none can be lost.'),
    standsFor: ({ metrics }) => (metrics.settledCurrent === null ? null : 0),
  },
} satisfies Record<string, Read>
