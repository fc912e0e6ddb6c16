/** Simplifications of a pressed joint. Shares that are tried: common practice, no source, unless one is named. */
import { pressIn } from '../../job/press/scenario.ts'
import { FIFTHS, HALF_AND_DOUBLE, type Simplification, scaledKeys } from './simplification.ts'

const INTERFERENCE = 'bushing.interference'
/** Roughness depth of either face [m]; from memory. */
const ROUGHNESS = 4e-6

export const JOINT: Simplification[] = [
  {
    id: 'joint-friction',
    element: 'joint',
    title: 'One friction for the whole joint',
    text: 'Friction in the joint depends on neither pressure, place, speed beyond its Stribeck curve nor on how often the pair was joined. Oil, roughness and galling change it from joint to joint.',
    bound: {
      how: 'runs',
      basis: 'Friction at rest and while pressing a fifth lower and higher.',
      variants: scaledKeys(['joint.friction.pressing', 'joint.friction.static'], FIFTHS),
      without: 'The joint has no friction.',
    },
  },
  {
    id: 'smoothing',
    element: 'joint',
    title: 'The interference of the file acts in full',
    text: 'Pressing in flattens the tips of the roughness, so that less than a measured interference acts: DIN 7190 takes 0.8 of the roughness depths of both faces off it. Where the file has what is left, it has been taken off already.',
    bound: {
      how: 'runs',
      basis:
        'As if the file had a measured one: less by 0.8 of {4e-6 m|µm} and {4e-6 m|µm}: roughness depths that are usual for reamed and turned faces, from memory.',
      variants: (scenario) => {
        const { interference } = pressIn(scenario).bushing
        const left = Math.max(0, interference - 2 * 0.8 * ROUGHNESS)
        return interference <= 0 ? [] : [{ label: 'flattened', edits: [{ path: INTERFERENCE, value: left }] }]
      },
      without: 'The bushing has play.',
    },
  },
  {
    id: 'rings',
    element: 'joint',
    title: 'Elastic rings of even wall',
    text: 'Bushing and bore are thick-walled cylinders of one length that stay elastic (Lamé). A boss that is longer than the bushing presses harder at its ends, one with ribs unevenly, and a wall that flows presses less.',
    bound: {
      how: 'runs',
      basis: 'Both moduli a fifth lower and higher, which changes the pressure by as much.',
      variants: scaledKeys(['bushing.modulus', 'bore.modulus'], FIFTHS),
    },
  },
  {
    id: 'tilt',
    element: 'joint',
    title: 'A tilt that stays',
    text: 'The bushing keeps the tilt that it comes with. A real one rights itself in its chamfer, or shaves the bore.',
    bound: {
      how: 'runs',
      basis: 'Tilt halved and doubled.',
      variants: scaledKeys(['bushing.tilt'], HALF_AND_DOUBLE),
      without: 'The bushing is straight in this scenario.',
    },
  },
  {
    id: 'joint-bristles',
    element: 'joint',
    title: 'Bristles of the joint',
    text: 'Before it slides the joint is a linear spring. How far a real joint gives before it breaks away is rarely known.',
    bound: {
      how: 'runs',
      basis: 'Stiffness of the joint at rest halved and doubled.',
      variants: scaledKeys(['joint.stiffness'], HALF_AND_DOUBLE),
    },
  },
  {
    id: 'frame',
    element: 'joint',
    title: 'One stiffness of frame and ram',
    text: 'Frame, ram and punch give like one spring in the line of the force. A frame of C shape also tilts as it opens.',
    bound: {
      how: 'runs',
      basis: 'Stiffness of frame and ram halved and doubled.',
      variants: scaledKeys(['ram.stiffness'], HALF_AND_DOUBLE),
    },
  },
  {
    id: 'chips',
    element: 'joint',
    title: 'No chips and no burr',
    text: 'Nothing is shaved off and nothing lies on the shoulder. A chip under the bushing takes the seating force and leaves it short.',
    bound: {
      how: 'unknown',
      measure: 'Press out some bushings and look at faces and shoulder; weigh depth against force.',
    },
  },
]
