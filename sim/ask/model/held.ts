/** Simplifications of part, pads and arm. */

import { armOf } from '../../axis/fill-arm.ts'
import { axisOf } from '../../axis/reflect.ts'
import { padLever } from '../../job/grip/fill.ts'
import { jawMassOf } from '../../job/grip/geometry.ts'
import { DAMPING_RATIO, SHEAR } from '../../job/grip/slip.ts'
import { jawStiffness } from '../../job/grip/statics.ts'
import { heldBy } from '../../job/grip/window.ts'
import { type Contact, STIFFNESS_SPREAD, workingPoint } from '../../loops/working-point.ts'
import { liftTime, readPath, type Scenario } from '../../scenario/index.ts'
import { strategyOf } from '../../strategy/index.ts'
import { HALF_AND_DOUBLE, type Simplification, scaled } from './simplification.ts'

/** Relaxing share that a part is given on top. */
const MORE_RELAXATION = 0.1
const SPREAD = `${STIFFNESS_SPREAD * 100} %`

/** Acceleration with which gravity and arm pull the part across the grip when its support goes [m/s²]. */
function hangs(scenario: Scenario): number {
  const arm = armOf({ ...scenario.arm, moves: [] })
  arm.at(liftTime(scenario))
  return arm.state.down
}

export const PART: Simplification[] = [
  {
    id: 'part-stiffness',
    element: 'part',
    title: 'One stiffness for every part',
    text: 'Both halves of the part are equally stiff, and all parts are alike.',
    bound: {
      how: 'runs',
      basis: `Part stiffness ${SPREAD} lower and higher, the spread that the loops assume: common practice, no source.`,
      variants: (scenario) =>
        scaled(
          (path) => readPath(scenario, path),
          ['part.stiffness'],
          [
            [`${SPREAD} lower`, 1 - STIFFNESS_SPREAD],
            [`${SPREAD} higher`, 1 + STIFFNESS_SPREAD],
          ],
        ),
    },
  },
  {
    id: 'part-damping',
    element: 'part',
    title: 'Damping of the contact',
    text: 'Hunt–Crossley damping, one figure for all speeds, and none in the pads beyond it. It is rarely known; a drop test tells it.',
    bound: {
      how: 'runs',
      basis: 'Contact damping halved and doubled.',
      variants: (scenario) => scaled((path) => readPath(scenario, path), ['part.damping'], HALF_AND_DOUBLE),
      without: 'The contact has no damping in this scenario.',
    },
  },
  {
    id: 'relaxation',
    element: 'part',
    title: 'One relaxation',
    text: 'A share of the force fades with one time constant, in the part and not in the pads. Foam, fruit and rubber go on fading over many decades of time.',
    bound: {
      how: 'runs',
      basis: `Relaxing share ${MORE_RELAXATION * 100} points higher.`,
      variants: ({ part }) => [
        {
          label: 'more relaxation',
          edits: [
            { path: 'part.relaxation.fraction', value: Math.min(0.98, part.relaxation.fraction + MORE_RELAXATION) },
          ],
        },
      ],
    },
  },
  {
    id: 'lumped-part',
    element: 'part',
    title: 'The part is one mass between two springs',
    text: 'One dimension, two contacts, no bending of its own. That holds while the lowest frequency of the part itself lies well above that of the axis pressing on it.',
    bound: {
      how: 'formula',
      formula: 'f = √(k_J/(M + m_J))/2π',
      basis: 'Closed form, on the nominal part at the force of the sensed-force target.',
      figures: (scenario) => {
        const { contact } = workingPoint(scenario, 'nominal')
        const stiffness = jawStiffness(scenario, contact as Contact)
        const mass = axisOf(scenario.actuator).mass + jawMassOf(scenario)
        return [{ label: 'Axis on the part', value: Math.sqrt(stiffness / mass), unit: 'rad/s', shown: 'Hz' }]
      },
    },
  },
  {
    id: 'rotation',
    element: 'part',
    title: 'The turn in the pads',
    text: 'A part held off its centre of mass turns about the grip axis, on one ellipse of friction force and torque and under pads that press evenly. The ellipse overrates a grip by up to 7 % where both work together, and few know where their pads press. It turns about no other axis.',
    bound: {
      how: 'formula',
      formula: 'h = (4/3)·µ_s·F·r_p/(m·a)',
      basis:
        'Closed form: two discs of the radius r_p under even pressure, carrying no weight besides. As friction carries the weight too, less is left.',
      figures: (scenario, strategy) => {
        const { jaws, part } = scenario
        const pull = hangs(scenario)
        if (pull === 0) return []
        const { expected } = strategyOf(strategy).forceOf(scenario)
        const torque = 2 * jaws.friction.static * expected * padLever(jaws)
        return [
          {
            label: 'Centre of mass off the grip axis, at most',
            value: torque / (part.mass * pull),
            unit: 'm',
            shown: 'mm',
          },
        ]
      },
      without: 'Nothing pulls on the part across the grip at rest.',
    },
  },
  {
    id: 'damage',
    element: 'part',
    title: 'Damage by force alone',
    text: 'A part is marked, dented or broken by the force at one contact, whatever the speed, the area, the place or the number of grips. A dent grows at constant force; a broken part keeps a rest of its stiffness, and figures after the break mean little.',
    bound: {
      how: 'unknown',
      measure: 'Press parts to their limit on these pads, at the speed of the grip, enough of them to see the spread.',
    },
  },
]

export const PADS: Simplification[] = [
  {
    id: 'pad-stiffness',
    element: 'pads',
    title: 'Pads are linear springs',
    text: 'A pad has one stiffness at any force and temperature, and neither damping nor creep of its own. Rubber is stiffer when it is cold, struck or pressed far.',
    bound: {
      how: 'runs',
      basis: 'Pad stiffness a fifth lower and higher.',
      variants: (scenario) =>
        scaled(
          (path) => readPath(scenario, path),
          ['jaws.padStiffness'],
          [
            ['a fifth lower', 0.8],
            ['a fifth higher', 1.2],
          ],
        ),
    },
  },
  {
    id: 'pad-friction',
    element: 'pads',
    title: 'One coefficient between pad and part',
    text: 'Friction depends on load at most, not on place, speed, dust, moisture, wear or time.',
    bound: {
      how: 'runs',
      basis: 'Static and sliding friction of the pads a fifth lower.',
      variants: (scenario) =>
        scaled(
          (path) => readPath(scenario, path),
          ['jaws.friction.static', 'jaws.friction.sliding'],
          [['a fifth lower', 0.8]],
        ),
    },
  },
  {
    id: 'pad-shear',
    element: 'pads',
    title: 'Shear of the pads follows from their stiffness',
    text: 'A pad is as soft in shear as a block of rubber would be. A thin or a profiled pad is not.',
    bound: {
      how: 'formula',
      formula: 'm·a/(2·s_G·k_p)',
      basis: 'Closed form; a pad half as stiff in shear doubles it.',
      figures: (scenario) => {
        const pull = hangs(scenario)
        if (pull === 0) return []
        const { part, jaws } = scenario
        const sag = (part.mass * pull) / (2 * SHEAR * jaws.padStiffness)
        return [{ label: 'Sag of the part at rest', value: sag, unit: 'm', shown: 'µm' }]
      },
      without: 'Nothing pulls on the part across the grip at rest.',
    },
  },
  {
    id: 'hand-over',
    element: 'pads',
    title: 'The support goes slowly',
    text: 'When the support goes the pads take over the weight without a swing. Pulled away at once, the part drops into the pads and swings through.',
    bound: {
      how: 'formula',
      formula: '1 + e^(−π·D/√(1 − D²)) times the weight',
      basis: 'Closed form: step response of the part on the shear of its pads.',
      figures: (scenario) => {
        const pull = hangs(scenario)
        if (pull === 0) return []
        const { part, jaws } = scenario
        const over = 1 + Math.exp((-Math.PI * DAMPING_RATIO) / Math.sqrt(1 - DAMPING_RATIO * DAMPING_RATIO))
        return [
          { label: 'Force needed at rest', value: heldBy(jaws.friction, part.mass * pull), unit: 'N' },
          { label: 'Needed in the swing', value: heldBy(jaws.friction, part.mass * pull * over), unit: 'N' },
        ]
      },
      without: 'Nothing pulls on the part across the grip at rest.',
    },
  },
]

export const ARM: Simplification[] = [
  {
    id: 'arm',
    element: 'arm',
    title: 'The arm follows its profile exactly',
    text: 'The arm neither vibrates nor feels the gripper, and its moves are straight. A real one overshoots its acceleration, most of all at the end of a move.',
    bound: {
      how: 'runs',
      basis: 'Acceleration of every move a fifth higher.',
      variants: ({ arm }) =>
        arm.moves.length === 0
          ? []
          : [
              {
                label: 'a fifth higher',
                edits: arm.moves.map(({ acceleration }, n) => ({
                  path: `arm.moves[${n}].acceleration`,
                  value: 1.2 * acceleration,
                })),
              },
            ],
      without: 'The arm does not move in this scenario.',
    },
  },
]
