/** What an effort is drawn over beside time, where the job is told by that: force over depth, torque over angle. */
import { capIn, type JobId, jointWindow, type Scenario, torqueWindow } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { capTraces } from '../cap/traces.ts'
import { tracesOf } from '../press/traces.ts'
import { type Quantity, quantityUnit, type UnitSystem } from '../units.ts'

/** A place across and an effort there [SI]. */
export interface Point {
  across: number
  effort: number
}

export interface Over {
  /** "over depth", and what is measured there. */
  title: string
  quantity: Quantity
  /** Place of each row; the effort is drawn from 0 on. */
  across(run: Pick<RunView, 'scenario' | 'traces'>): Float64Array
  /** How far the work goes by the file. */
  farthest(scenario: Scenario): number
  /** The edges that the effort has to stay between, up to the end of the axis; empty: no such edge. */
  edges(scenario: Scenario, end: number): { least: Point[]; most: Point[] }
  /** What lies beyond them. */
  below: string
  above: string
}

/** Past the nominal liner [rad], where a closure is turned to. */
const BEYOND = 1

const OVER: Partial<Record<JobId, Over>> = {
  press: {
    title: 'over depth',
    quantity: 'length',
    across: ({ traces }) => tracesOf(traces!).depth,
    farthest(scenario) {
      const { band, depth } = jointWindow(scenario)
      return Math.max(depth.least, band.at(-1)?.depth ?? 0)
    },
    edges(scenario) {
      const { band } = jointWindow(scenario)
      const edge = (of: 'least' | 'most') => band.map((point) => ({ across: point.depth, effort: point[of] }))
      return band.length > 1 ? { least: edge('least'), most: edge('most') } : { least: [], most: [] }
    },
    below: 'will not hold',
    above: 'jams or stands askew',
  },
  cap: {
    title: 'over turns on the thread',
    quantity: 'turns',
    across: ({ traces, scenario }) => {
      const { startAngle } = capIn(scenario).chuck
      return capTraces(traces!).angle.map((angle) => angle - startAngle)
    },
    farthest: (scenario) => capIn(scenario).closure.engagement + BEYOND,
    edges(scenario, end) {
      const { least, most, turns } = torqueWindow(scenario)
      const level = (effort: number) => [
        { across: turns ?? 0, effort },
        { across: end, effort },
      ]
      return { least: least > 0 ? level(least) : [], most: most === null ? [] : level(most) }
    },
    below: 'loose',
    above: 'too tight',
  },
}

/** Null: the job is told over time alone. */
export const overOf = ({ job }: Pick<Scenario, 'job'>): Over | null => OVER[job] ?? null

export const acrossUnit = ({ quantity }: Over, units: UnitSystem) => quantityUnit(quantity, units)
