/** The figures of a closure that a scenario may name. How each is taken from a run: `job/cap/metrics.ts`. */
import { FIGURES, type FigureName } from '../figures.ts'

const figure = (label: string, unit: string, shown?: string): FigureName =>
  shown ? { label, unit, shown } : { label, unit }

/** In the order of tables. */
export const CAP_FIGURES = {
  contactTime: figure('Liner met', 's', 'ms'),
  contactSpeed: figure('Speed at the liner', 'rad/s', 'rev/min'),
  capTime: figure('Tightening time', 's', 'ms'),
  peakTorque: figure('Peak torque', 'N·m'),
  peakTorqueTime: FIGURES.peakForceTime,
  settledTorque: figure('Settled torque', 'N·m'),
  overshoot: figure('Overshoot', 'N·m'),
  applicationTorque: figure('Application torque', 'N·m'),
  torqueMargin: figure('Margin to the torque window', '', '%'),
  stripMargin: figure('Margin to stripping', '', '%'),
  turns: figure('Turns on the thread', 'rad', 'rev'),
  seatAngle: figure('Angle past the liner', 'rad', '°'),
  preload: figure('Preload', 'N'),
  removalTorque: figure('Removal torque at once', 'N·m'),
  removalAfter: figure('Removal torque after relaxing', 'N·m'),
  feed: figure('Way down', 'm', 'mm'),
  feedSpeed: figure('Way down, fastest', 'm/s', 'mm/s'),
  work: figure('Work of tightening', 'J'),
  settledCurrent: FIGURES.settledCurrent,
  peakCurrent: FIGURES.peakCurrent,
  rmsCurrent: FIGURES.rmsCurrent,
  busPower: FIGURES.busPower,
  windingTemperature: FIGURES.windingTemperature,
  holdTime: FIGURES.holdTime,
  torqueRipple: figure('Torque ripple, rms', 'N·m'),
  reversals: FIGURES.reversals,
  lostCycles: FIGURES.lostCycles,
  headTravel: figure('Angle of the head', 'rad', 'rev'),
}

export type CapFigureId = keyof typeof CAP_FIGURES
