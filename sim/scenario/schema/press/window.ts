/** What the joint has to be in the end. */
import Type from 'typebox'
import { group, limit, quantity } from '../../quantity.ts'

const point = Type.Object(
  {
    depth: quantity({
      label: 'Depth in the band',
      symbol: 'h',
      unit: 'm',
      shown: 'mm',
      default: 0,
      range: [0, 1],
      usual: [0, 0.1],
      note: 'Depth of the bushing at which both ends of the band are given; between two points they run straight.',
    }),
    least: quantity({
      label: 'Least force in the band',
      symbol: 'F_l',
      unit: 'N',
      default: 0,
      range: [0, 1e8],
      usual: [0, 200000],
      note: 'A force below it means a joint that will not hold: too little interference, oil, or a soft wall.',
    }),
    most: quantity({
      label: 'Most force in the band',
      symbol: 'F_u',
      unit: 'N',
      default: 1e5,
      range: [0, 1e8],
      usual: [10, 200000],
      note: 'A force above it means a bushing that jams, shaves or stands askew, whatever it ends at.',
    }),
  },
  { title: 'Point', additionalProperties: false },
)

export const window = group('Joint window', {
  mostForce: limit({
    label: 'Force limit of the joint',
    symbol: 'F_most',
    unit: 'N',
    range: [0.001, 1e8],
    usual: [50, 200000],
    note: 'Force of the ram that must not be exceeded at any depth, the shoulder included.',
  }),
  depth: group('Depth', {
    least: quantity({
      label: 'Least depth',
      symbol: 'h_l',
      unit: 'm',
      shown: 'mm',
      default: 0.0079,
      range: [0, 1],
      usual: [0.002, 0.1],
      note: 'A bushing that ends before it is short, however hard it was pressed.',
    }),
    most: limit({
      label: 'Most depth',
      symbol: 'h_u',
      unit: 'm',
      shown: 'mm',
      range: [0, 1],
      usual: [0.002, 0.1],
      note: 'A bushing that ends beyond it was driven too far, as where nothing but the drive stops it.',
    }),
  }),
  seat: group('Seating force', {
    least: quantity({
      label: 'Least seating force',
      symbol: 'S_l',
      unit: 'N',
      default: 0,
      range: [0, 1e8],
      usual: [0, 200000],
      note: 'Highest force on the shoulder that there has to be, so that face lies on face; 0 asks for none.',
    }),
    most: limit({
      label: 'Most seating force',
      symbol: 'S_u',
      unit: 'N',
      range: [0.001, 1e8],
      usual: [50, 200000],
      note: 'Highest force that shoulder and bushing take from each other once they have met.',
    }),
  }),
  band: Type.Array(point, { title: 'Band', default: [], maxItems: 40 }),
})
