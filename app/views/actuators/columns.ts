/** The columns by which axes are compared: heading, figure, unit, and one sentence on what it says. */
import { type AxisReport, type ComparedAxis, SCHEMAS } from '../../../sim/index.ts'
import type { Quantity } from '../../read/units.ts'

export interface Column {
  id: string
  label: string
  note: string
  quantity: Quantity
  value(report: AxisReport): number | null
}

export const COLUMNS: Column[] = [
  {
    id: 'continuous',
    label: 'Continuous force',
    note: 'Force at one contact that the motor holds for ever.',
    quantity: 'force',
    value: (report) => report.continuousForce,
  },
  {
    id: 'peak',
    label: 'Peak force',
    note: 'Force at one contact at peak current, for a short time.',
    quantity: 'force',
    value: (report) => report.peakForce,
  },
  {
    id: 'friction',
    label: 'Friction, ±',
    note: 'Friction may take so much of the wanted grip force at one contact, or add it, and the current does not show it.',
    quantity: 'force',
    value: (report) => report.frictionBand,
  },
  {
    id: 'impact',
    label: 'Impact',
    note: 'First impact at the speed of touching: all the energy of the moving mass in pads and part, without damping.',
    quantity: 'force',
    value: (report) => report.impactForce,
  },
  {
    id: 'mass',
    label: 'Moving mass',
    note: 'Mass behind the impact, the rotor reflected through lead or gear.',
    quantity: 'mass',
    value: (report) => report.movingMass,
  },
  {
    id: 'rating',
    label: 'Rated current',
    note: 'Current that the motor carries for ever.',
    quantity: 'current',
    value: ({ actuator }) => actuator.motor.continuousCurrent,
  },
  {
    id: 'asked',
    label: 'Current asked',
    note: 'Highest settled current of any strategy.',
    quantity: 'current',
    value: ({ strategies }) => highest(strategies.map(({ result }) => result?.metrics.settledCurrent ?? null)),
  },
  {
    id: 'speed',
    label: 'Top speed',
    note: 'Highest jaw speed at bus voltage and running friction.',
    quantity: 'speed',
    value: (report) => report.topSpeed,
  },
  {
    id: 'stroke',
    label: 'Stroke left',
    note: 'Stroke of a jaw beyond the end of its profile.',
    quantity: 'length',
    value: (report) => report.strokeReserve,
  },
  {
    id: 'winding',
    label: 'Winding',
    note: 'Highest winding temperature of any strategy at this duty.',
    quantity: 'temperature',
    value: (report) => report.windingTemperature,
  },
]

function highest(values: (number | null)[]): number | null {
  const known = values.filter((value) => value !== null).map(Math.abs)
  return known.length > 0 ? Math.max(...known) : null
}

export const familyLabel = ({ report }: ComparedAxis): string => {
  const { kind, family } = report.actuator
  const { enum: words, labels } = SCHEMAS[kind].properties.actuator.properties.family as unknown as {
    enum: string[]
    labels: string[]
  }
  return labels[words.indexOf(family)] ?? family
}
