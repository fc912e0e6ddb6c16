/** What happens to the grip from outside. */
import Type from 'typebox'
import { choice, quantity } from '../quantity.ts'

export const powerLoss = Type.Object(
  {
    time: quantity({
      label: 'Time',
      symbol: 't_p',
      unit: 's',
      default: 1,
      range: [0, 3600],
      usual: [0.1, 10],
      note: 'Time at which the supply fails; from then on the axis grips with its friction alone.',
    }),
    windings: choice(
      'Windings',
      ['open', 'shorted'],
      ['Open', 'Shorted'],
      'Open: no current flows. Shorted: the moving motor brakes itself.',
    ),
  },
  { title: 'Power loss', additionalProperties: false },
)

export const release = Type.Object(
  {
    time: quantity({
      label: 'Time',
      symbol: 't_r',
      unit: 's',
      default: 1.3,
      range: [0, 3600],
      usual: [0.1, 10],
      note: 'Time at which the jaws open again; from then on the part stands on its support.',
    }),
  },
  { title: 'Release', additionalProperties: false },
)
