/** The figures of a pressed joint that a scenario may name. How each is taken from a run: `job/press/metrics.ts`. */
import { FIGURES, type FigureName } from '../figures.ts'

const figure = (label: string, unit: string, shown?: string): FigureName =>
  shown ? { label, unit, shown } : { label, unit }

/** In the order of tables. */
export const PRESS_FIGURES = {
  contactTime: FIGURES.contactTime,
  contactSpeed: FIGURES.contactSpeed,
  pressTime: figure('Press time', 's', 'ms'),
  peakForce: FIGURES.peakForce,
  peakForceTime: FIGURES.peakForceTime,
  settledForce: FIGURES.settledForce,
  seatForce: figure('Seating force', 'N'),
  depth: figure('Depth', 'm', 'mm'),
  springBack: figure('Ram reads deeper by', 'm', 'mm'),
  bandMargin: figure('Margin to the band', '', '%'),
  forceMargin: figure('Margin to the force limit', '', '%'),
  tiltForce: figure('Force by tilt, most', 'N'),
  work: figure('Press-in work', 'J'),
  jointPressure: figure('Joint pressure', 'Pa', 'MPa'),
  boreStress: figure('Hoop stress of the bore', 'Pa', 'MPa'),
  yieldMargin: figure('Margin to yield of the bore', '', '%'),
  holdingForce: figure('Force to push it out', 'N'),
  settledCurrent: FIGURES.settledCurrent,
  peakCurrent: FIGURES.peakCurrent,
  rmsCurrent: FIGURES.rmsCurrent,
  busPower: FIGURES.busPower,
  windingTemperature: FIGURES.windingTemperature,
  holdTime: FIGURES.holdTime,
  forceRipple: FIGURES.forceRipple,
  reversals: FIGURES.reversals,
  lostCycles: FIGURES.lostCycles,
  ramTravel: figure('Ram travel', 'm', 'mm'),
}

export type PressFigureId = keyof typeof PRESS_FIGURES
