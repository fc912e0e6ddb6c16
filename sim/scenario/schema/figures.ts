/** The figures of a grip that a scenario may name: what each is called and its unit. How each is taken from a run: `job/grip/metrics.ts`. */

export interface FigureName {
  label: string
  /** SI unit, and the unit in which it is read; left out where they are the same. */
  unit: string
  shown?: string
}

const figure = (label: string, unit: string, shown?: string): FigureName =>
  shown ? { label, unit, shown } : { label, unit }

/** In the order of tables. */
export const FIGURES = {
  contactTime: figure('First touch', 's', 'ms'),
  contactSpeed: figure('Speed at touch', 'm/s', 'mm/s'),
  gripTime: figure('Grip time', 's', 'ms'),
  peakForce: figure('Peak force', 'N'),
  peakForceTime: figure('Time of the peak', 's', 'ms'),
  settledForce: figure('Settled force', 'N'),
  minForceInMove: figure('Least force in a move', 'N'),
  maxForceInMove: figure('Most force in a move', 'N'),
  requiredForce: figure('Force needed', 'N'),
  holdMargin: figure('Hold margin', '', '%'),
  damageMargin: figure('Damage margin', '', '%'),
  slipDistance: figure('Slip', 'm', 'mm'),
  rotation: figure('Turned', 'rad', '°'),
  seenWidth: figure('Width seen', 'm', 'mm'),
  seenStiffness: figure('Stiffness seen', 'N/m', 'N/mm'),
  settledCurrent: figure('Settled current', 'A'),
  peakCurrent: figure('Peak current', 'A'),
  rmsCurrent: figure('Rms current', 'A'),
  busPower: figure('Bus power, highest', 'W'),
  windingTemperature: figure('Winding, highest', '°C'),
  holdTime: figure('May be held', 's'),
  forceRipple: figure('Force ripple, rms', 'N'),
  reversals: figure('Reversals', '1/s'),
  lostCycles: figure('Cycles lost', ''),
  jawTravel: figure('Jaw travel', 'm', 'mm'),
}

export type FigureId = keyof typeof FIGURES
