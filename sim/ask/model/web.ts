/** Simplifications of a running web. Shares that are tried: common practice, no source, unless one is named. */
import { FIFTHS, HALF_AND_DOUBLE, type Simplification, scaledKeys } from './simplification.ts'

/** Spread of published moduli of one kind of web (list for common webs). */
const MODULUS = [
  ['30 % lower', 0.7],
  ['30 % higher', 1.3],
] as const

export const WEB: Simplification[] = [
  {
    id: 'web-modulus',
    element: 'web',
    title: 'One modulus',
    text: 'The web stretches in proportion, alike in every place and at every speed, moisture and temperature. Published moduli of one kind of web differ by 30 %.',
    bound: { how: 'runs', basis: 'Modulus 30 % lower and higher.', variants: scaledKeys(['web.modulus'], MODULUS) },
  },
  {
    id: 'one-span',
    element: 'web',
    title: 'One span',
    text: 'What comes into the span has one tension. In a line the spans before it hand their changes on, each within its own L/v.',
    bound: {
      how: 'runs',
      basis: 'Tension of entry a fifth lower and higher.',
      variants: scaledKeys(['span.entryTension'], FIFTHS),
      without: 'The web comes without tension in this scenario.',
    },
  },
  {
    id: 'idler-drag',
    element: 'web',
    title: 'Drag of the idlers',
    text: 'All idlers drag like one of them behind the gauge roll, always alike. Cold grease, dirt and wear change it.',
    bound: {
      how: 'runs',
      basis: 'Drag of the idlers halved and doubled.',
      variants: scaledKeys(['idlers.coulomb', 'idlers.breakaway', 'idlers.viscous'], HALF_AND_DOUBLE),
      without: 'The idlers do not drag in this scenario.',
    },
  },
  {
    id: 'out-of-round',
    element: 'web',
    title: 'One wave a turn',
    text: 'A roll that is out of round swings once a turn, in the speed with which it takes the web in. A wound roll is also flat from lying, and the span changes its length with it.',
    bound: {
      how: 'runs',
      basis: 'What both rolls are out of round halved and doubled.',
      variants: scaledKeys(['roll.runout', 'line.runout'], HALF_AND_DOUBLE),
      without: 'Both rolls are round in this scenario.',
    },
  },
  {
    id: 'web-damping',
    element: 'web',
    title: 'Damping of the web',
    text: 'Stretching leads the stretch by one time. Paper and film creep besides, and both are rarely known.',
    bound: {
      how: 'runs',
      basis: 'Damping of the web halved and doubled.',
      variants: scaledKeys(['web.damping'], HALF_AND_DOUBLE),
      without: 'The web has no damping in this scenario.',
    },
  },
  {
    id: 'air',
    element: 'web',
    title: 'No air under the web',
    text: 'The web runs with the rolls without slip, save for the idlers that it does not hold. From some speed on air lifts it off.',
    bound: {
      how: 'unknown',
      measure: 'Mark roll and web, and compare their lengths at the highest speed and the least tension.',
    },
  },
  {
    id: 'across',
    element: 'web',
    title: 'Alike over its width',
    text: 'Tension is the same over the width, and the web neither wanders nor wrinkles. A baggy edge is slack while the middle is taut.',
    bound: {
      how: 'unknown',
      measure:
        'Cut the web free on a flat table and look for bow and slack edges; measure tension at both ends of the gauge roll.',
    },
  },
]
