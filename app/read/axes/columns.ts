/** The columns by which axes are compared: heading, figure, unit, and one sentence on what it says. */
import {
  ACTUATORS,
  type Actuator,
  type AxisFigures,
  axisFigures,
  jobOf,
  jobWords,
  type RunResult,
  type Scenario,
} from '../../../sim/index.ts'
import { effortQuantity, type Quantity } from '../units.ts'

/** What is known of an axis: its closed forms, and what was run on it. */
export interface KnownAxis extends AxisFigures {
  actuator: Actuator
  /** Highest of any run [°C]. */
  windingTemperature: number | null
  strategies: { result: RunResult | null }[]
}

/** Of an axis that was run on the bench. `wanted`: effort of the job [N or N·m]. */
export function knownAxis(scenario: Scenario, results: (RunResult | null)[], wanted: number): KnownAxis {
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

/** Quantities of an output that travels, and of one that turns. */
const STRAIGHT = { mass: 'movingMass', speed: 'speed', way: 'length' } as const
const TURNING = { mass: 'inertia', speed: 'turningSpeed', way: 'turns' } as const

/** For the job of a scenario. */
export function columnsOf(scenario: Pick<Scenario, 'job'>): Column[] {
  const { output } = jobOf(scenario)
  const { axes, study } = jobWords(scenario)
  const turns = output.travel === 'rad'
  const { mass, speed, way } = turns ? TURNING : STRAIGHT
  const effort = effortQuantity(scenario)
  const name = study.effort
  const what = [capital(name), axes.where].filter(Boolean).join(' ')
  const columns: (Column | false)[] = [
    {
      id: 'continuous',
      label: `Continuous ${name}`,
      note: `${what} that the motor holds for ever, its magnets as warm as that makes them.`,
      quantity: effort,
      value: (axis) => axis.continuous,
    },
    {
      id: 'peak',
      label: `Peak ${name}`,
      note: `${what} at peak current, for a short time, the motor from cold.`,
      quantity: effort,
      value: (axis) => axis.peak,
    },
    {
      id: 'friction',
      label: 'Friction, ±',
      note: `Friction may take so much of the wanted ${[axes.wanted, axes.where].filter(Boolean).join(' ')}, or add it, and the current does not show it.`,
      quantity: effort,
      value: (axis) => axis.frictionBand,
    },
    { id: 'impact', label: 'Impact', note: axes.impact, quantity: effort, value: (axis) => axis.impact },
    {
      id: 'mass',
      label: turns ? 'Moving inertia' : 'Moving mass',
      note: `${turns ? 'Inertia' : 'Mass'} behind the impact, the rotor reflected through ${turns ? 'its gear' : 'lead or gear'}.`,
      quantity: mass,
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
      note: `Highest ${output.label} speed at bus voltage and running friction.`,
      quantity: speed,
      value: (axis) => axis.topSpeed,
    },
    !turns && {
      id: 'stroke',
      label: 'Stroke left',
      note: `Stroke of a ${output.label} beyond the end of its profile.`,
      quantity: way,
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
  return columns.filter((column) => column !== false)
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

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
