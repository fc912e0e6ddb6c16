/** The columns by which axes are compared: heading, figure, unit, and one sentence on what it says. */
import {
  ACTUATORS,
  type Actuator,
  type AxisFigures,
  axisFigures,
  type GripResult,
  type Scenario,
} from '../../../sim/index.ts'
import type { Quantity } from '../units.ts'

/** What is known of an axis: its closed forms, and the grips that were run on it. */
export interface KnownAxis extends AxisFigures {
  actuator: Actuator
  /** Highest of any grip [°C]. */
  windingTemperature: number | null
  strategies: { result: GripResult | null }[]
}

/** Of an axis whose grips were run on the bench. `wanted`: grip force at one contact [N]. */
export function knownAxis(scenario: Scenario, results: (GripResult | null)[], wanted: number): KnownAxis {
  return {
    ...axisFigures(scenario, scenario.actuator, wanted),
    actuator: scenario.actuator,
    windingTemperature: highest(results.map((result) => result?.metrics.windingTemperature ?? null)),
    strategies: results.map((result) => ({ result })),
  }
}

export interface Column {
  id: string
  label: string
  note: string
  quantity: Quantity
  value(axis: KnownAxis): number | null
}

export const COLUMNS: Column[] = [
  {
    id: 'continuous',
    label: 'Continuous force',
    note: 'Force at one contact that the motor holds for ever, its magnets as warm as that makes them.',
    quantity: 'force',
    value: (axis) => axis.continuousForce,
  },
  {
    id: 'peak',
    label: 'Peak force',
    note: 'Force at one contact at peak current, for a short time, the motor from cold.',
    quantity: 'force',
    value: (axis) => axis.peakForce,
  },
  {
    id: 'friction',
    label: 'Friction, ±',
    note: 'Friction may take so much of the wanted grip force at one contact, or add it, and the current does not show it.',
    quantity: 'force',
    value: (axis) => axis.frictionBand,
  },
  {
    id: 'impact',
    label: 'Impact',
    note: 'First impact at the speed of touching: all the energy of the moving mass in pads and part, without damping.',
    quantity: 'force',
    value: (axis) => axis.impactForce,
  },
  {
    id: 'mass',
    label: 'Moving mass',
    note: 'Mass behind the impact, the rotor reflected through lead or gear.',
    quantity: 'mass',
    value: (axis) => axis.movingMass,
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
    value: (axis) => axis.topSpeed,
  },
  {
    id: 'stroke',
    label: 'Stroke left',
    note: 'Stroke of a jaw beyond the end of its profile.',
    quantity: 'length',
    value: (axis) => axis.strokeReserve,
  },
  {
    id: 'winding',
    label: 'Winding',
    note: 'Highest winding temperature of any strategy at this duty.',
    quantity: 'temperature',
    value: (axis) => axis.windingTemperature,
  },
]

function highest(values: (number | null)[]): number | null {
  const known = values.filter((value) => value !== null).map(Math.abs)
  return known.length > 0 ? Math.max(...known) : null
}

export const familyLabel = ({ kind, family }: Actuator): string => {
  const { enum: words, labels } = ACTUATORS[kind].properties.family as unknown as {
    enum: string[]
    labels: string[]
  }
  return labels[words.indexOf(family)] ?? family
}
