/** What differs from part to part, from axis to axis, from day to day. */
import Type from 'typebox'
import { choice, group, optional, quantity } from '../quantity.ts'

export const LAWS = ['normal', 'uniform', 'triangular', 'lognormal', 'measured'] as const

/** Most values of a measured list. A file holds that many of full length. */
const MOST_VALUES = 2000

const PATH = {
  title: 'Quantity',
  description: 'Path of the quantity that varies, such as part.width.',
  maxLength: 80,
  default: '',
}

/** A size in the unit of the quantity, or as a share of its value. */
const size = (label: string, symbol: string, least: number, note: string) =>
  optional(quantity({ label, symbol, unit: '', range: [least, 1e9], note }))

export const varied = Type.Object(
  {
    path: Type.String(PATH),
    law: choice(
      'Law',
      LAWS,
      ['Normal', 'Uniform', 'Triangular', 'Lognormal', 'Measured'],
      'How the values lie about the one of the file, or, measured, which they are.',
    ),
    share: Type.Boolean({
      title: 'As a share',
      description: 'Sizes, or measured values, are shares of the value in the file.',
      default: false,
    }),
    sd: size('Standard deviation', 'σ', 0, 'Standard deviation of a normal law; 0 for a quantity that stays as it is.'),
    tolerance: size(
      'Tolerance',
      'T',
      0,
      'Half width of a tolerance of which the capability is known, instead of a standard deviation.',
    ),
    cpk: optional(
      quantity({
        label: 'Capability',
        symbol: 'C_pk',
        unit: '',
        range: [0.1, 10],
        usual: [1, 2],
        note: 'Capability of a centred process: the tolerance over three standard deviations.',
      }),
    ),
    within: size(
      'Cut at',
      'w',
      0,
      'Values further off do not occur, as where parts are sorted out; left out for none.',
    ),
    half: size('Half width', 'h', 0, 'Half width of a uniform law: every value up to so far off is as likely.'),
    low: size('Low end', 'a', -1e9, 'Lower end of a triangular law.'),
    mode: size('Most likely', 'c', -1e9, 'Most likely value of a triangular law.'),
    high: size('High end', 'b', -1e9, 'Upper end of a triangular law.'),
    factor: optional(
      quantity({
        label: 'Factor',
        symbol: 'f',
        unit: '',
        range: [1, 100],
        usual: [1.02, 1.5],
        note: 'Geometric standard deviation of a lognormal law: two thirds of the values lie within this factor of the one in the file.',
      }),
    ),
    values: optional(
      Type.Array(
        quantity({
          label: 'Value',
          symbol: 'x',
          unit: '',
          range: [-1e12, 1e12],
          note: 'A measured value; each of the list occurs as often.',
        }),
        { title: 'Measured values', maxItems: MOST_VALUES },
      ),
    ),
  },
  { title: 'Varied quantity', additionalProperties: false },
)

const together = Type.Object(
  {
    paths: Type.Array(Type.String(PATH), { title: 'Quantities', default: [], maxItems: 2 }),
    correlation: quantity({
      label: 'Correlation',
      symbol: 'ρ',
      unit: '',
      default: 0,
      range: [-0.999, 0.999],
      note: 'How far the two go together: their normal scores have this correlation.',
    }),
  },
  { title: 'Correlation', additionalProperties: false },
)

export const spread = group('Spread', {
  varies: Type.Array(varied, { title: 'What varies', default: [], maxItems: 40 }),
  together: Type.Array(together, { title: 'What goes together', default: [], maxItems: 100 }),
})
