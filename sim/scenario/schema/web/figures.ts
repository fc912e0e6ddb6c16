/** The figures of a web that a scenario may name. How each is taken from a run: `job/web/metrics.ts`. */
import { FIGURES, type FigureName } from '../figures.ts'

const figure = (label: string, unit: string, shown?: string): FigureName =>
  shown ? { label, unit, shown } : { label, unit }

/** In the order of tables. */
export const WEB_FIGURES = {
  contactTime: figure('First tension', 's', 'ms'),
  tautTime: figure('Taut', 's', 'ms'),
  meanTension: figure('Mean tension', 'N'),
  leastTension: figure('Least tension', 'N'),
  leastTensionTime: figure('Time of the least', 's'),
  mostTension: figure('Most tension', 'N'),
  mostTensionTime: figure('Time of the most', 's'),
  tensionRipple: figure('Tension ripple, rms', 'N'),
  settledTension: figure('Tension at the end', 'N'),
  slackMargin: figure('Margin to the least', '', '%'),
  stretchMargin: figure('Margin to the most', '', '%'),
  breakMargin: figure('Margin to break', '', '%'),
  draw: figure('Draw, mean', '', '%'),
  strain: figure('Strain at the most', '', '%'),
  timeConstant: figure('Time constant of the span', 's'),
  rollRadius: figure('Roll radius, end', 'm', 'mm'),
  rollInertia: figure('Roll inertia, end', 'kg·m²'),
  woundLength: figure('Length taken up', 'm'),
  rollTorque: figure('Web torque, highest', 'N·m'),
  settledCurrent: FIGURES.settledCurrent,
  peakCurrent: FIGURES.peakCurrent,
  rmsCurrent: FIGURES.rmsCurrent,
  busPower: FIGURES.busPower,
  windingTemperature: FIGURES.windingTemperature,
  holdTime: FIGURES.holdTime,
  reversals: FIGURES.reversals,
  lostCycles: FIGURES.lostCycles,
}

export type WebFigureId = keyof typeof WEB_FIGURES
