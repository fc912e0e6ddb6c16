/** Simplifications of the transmission, and of jaws. */

import { GRAVITY } from '../../axis/arm.ts'
import { axisOf } from '../../axis/reflect.ts'
import { forceSlopes } from '../../loops/design/axis-figures.ts'
import { readPath, type Scenario } from '../../scenario/index.ts'
import { strategyOf } from '../../strategy/index.ts'
import { effortUnits, HALF_AND_DOUBLE, type Simplification, scaled, type Variant } from './simplification.ts'

/** Friction of a jaw's guide; common practice, no source. */
const GUIDE_FRICTION = 0.1

const halfAndDouble =
  (...keys: string[]) =>
  (scenario: Scenario) =>
    scaled(
      (path) => readPath(scenario, path),
      keys.map((key) => `actuator.transmission.${key}`),
      HALF_AND_DOUBLE,
    )

/** Effort for each metre or radian of the motor side, as a perfect gauge would read it [N/m; N·m/rad]; null: nothing is pressed on. */
export function forceSlope(scenario: Scenario): number | null {
  const slopes = forceSlopes(scenario)
  return slopes && slopes.nominal / (1 + scenario.sensors.gauge.gainError)
}

/** Thread friction, or what a gear loses, halved and doubled; a direct drive has neither. */
function loadFriction(scenario: Scenario): Variant[] {
  const { transmission } = scenario.actuator
  if ('threadFriction' in transmission) return halfAndDouble('threadFriction')(scenario)
  if (!('efficiency' in transmission) || transmission.efficiency === 1) return []
  const loss = 1 / transmission.efficiency - 1
  return HALF_AND_DOUBLE.map(([label, factor]) => ({
    label: `gear loss ${label}`,
    edits: [{ path: 'actuator.transmission.efficiency', value: 1 / (1 + factor * loss) }],
  }))
}

export const MECHANIC: Simplification[] = [
  {
    id: 'one-stiffness',
    element: 'transmission',
    title: 'One stiffness from motor to output',
    text: 'Coupling, screw or gear, bearing, nut and what stands on it are one linear spring between two rigid masses. A real chain has more modes, and bearings and nuts are softer at small loads.',
    bound: { how: 'runs', basis: 'Transmission stiffness halved and doubled.', variants: halfAndDouble('stiffness') },
  },
  {
    id: 'transmission-damping',
    element: 'transmission',
    title: 'Viscous damping of the transmission',
    text: 'One damper in parallel to the spring; in the play of a backlash it goes on damping. Real damping comes from sliding faces and depends on amplitude.',
    bound: { how: 'runs', basis: 'Transmission damping halved and doubled.', variants: halfAndDouble('damping') },
  },
  {
    id: 'axis-friction',
    element: 'transmission',
    title: 'Friction that is the same everywhere and always',
    text: 'Friction depends on speed and load, not on place, temperature, wear or time at rest. Cold grease, a seal or a tight spot change it.',
    bound: {
      how: 'runs',
      basis: 'Coulomb, break-away and viscous friction halved and doubled together.',
      variants: halfAndDouble('coulomb', 'breakaway', 'viscous'),
      without: 'This axis has no friction of its own.',
    },
  },
  {
    id: 'load-friction',
    element: 'transmission',
    title: 'One coefficient in thread or gear',
    text: 'Thread friction and gear loss are one figure for all loads, speeds and temperatures. Handbooks give ranges of a factor of two and more for the same pairing.',
    bound: {
      how: 'runs',
      basis: 'Thread friction, or gear loss, halved and doubled.',
      variants: loadFriction,
      without: 'A direct drive has neither thread nor gear, or this one has no loss.',
    },
  },
  {
    id: 'bristles',
    element: 'transmission',
    title: 'Bristle stiffness',
    text: 'Before it breaks away friction is a linear spring with a damping ratio of one half. Few data sheets state that stiffness.',
    bound: { how: 'runs', basis: 'Bristle stiffness halved and doubled.', variants: halfAndDouble('bristleStiffness') },
  },
  {
    id: 'reach',
    element: 'transmission',
    title: 'Fixed reach of loaded flanks',
    text: 'Friction that grows with the load turns round within a fixed travel at each reversal.',
    bound: {
      how: 'formula',
      formula: 'ΔF = (dF/dx)·δ',
      basis: 'Closed form, on nominal work; δ is common practice, no source.',
      figures: (scenario) => {
        const { raise, lower, loadReach } = axisOf(scenario.actuator)
        const slope = forceSlope(scenario)
        if (raise + lower < 1e-9 || slope === null) return []
        return [{ label: 'On the work over that reach', value: slope * loadReach, unit: effortUnits(scenario).work }]
      },
      without: 'This axis has no friction that grows with the load.',
    },
  },
]

export const JAWS: Simplification[] = [
  {
    id: 'guide',
    element: 'jaws',
    title: 'Jaws neither tilt nor bind',
    text: 'A jaw slides without tilting. In a real one the grip force acts beside the guide, tilts the carriage and adds friction; with a short guide and a long finger it jams.',
    bound: {
      how: 'formula',
      formula: '2·µ_g·F·h/l_g with h = l_g',
      basis: `Closed form: the moment of F at the height h is carried by two forces at the ends of a guide of length l_g. Guide friction µ_g of ${GUIDE_FRICTION}: common practice, no source. Height and length are not in the scenario; scale with yours.`,
      figures: (scenario, strategy) => {
        const { expected } = strategyOf(strategy).forceOf(scenario)
        return [{ label: 'Friction of a guide at the set force', value: 2 * GUIDE_FRICTION * expected, unit: 'N' }]
      },
    },
  },
  {
    id: 'coupling',
    element: 'jaws',
    title: 'Driven jaws move exactly alike',
    text: 'Two driven jaws share one coordinate, so the arm cannot push them along the grip. A real coupling has play and a pitch error between its sides, and jaws of unlike mass do feel the arm.',
    bound: {
      how: 'unknown',
      measure: 'Move both jaws against dial gauges, and shake the arm along the grip with a part in them.',
    },
  },
  {
    id: 'support',
    element: 'jaws',
    title: 'The part slides on its support without friction',
    text: 'Until the support goes the part centres itself freely between the jaws. Friction under it keeps the two contact forces apart.',
    bound: {
      how: 'formula',
      formula: 'µ_s·m·g',
      basis: 'Closed form, with the static friction of the pads for that of the support.',
      figures: ({ jaws, part }) => [
        { label: 'Difference of the contact forces', value: jaws.friction.static * part.mass * GRAVITY, unit: 'N' },
      ],
    },
  },
]
