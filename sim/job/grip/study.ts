/** What a study of many grips has to know: what it tells, what there is to spare, and how parts and pads usually vary. */
import type { JobStudy } from '../job.ts'
import { nearest } from '../moments.ts'
import { share, type Usual } from '../usual.ts'
import type { GripJudgement } from './result.ts'
import { forceWindow } from './window.ts'

const USUAL: readonly Usual[] = [
  [
    'part.width',
    share({ law: 'normal', sd: 0.005 }),
    'Moulded, blown or thrown parts differ by a per cent or so; machined ones by far less.',
  ],
  ['part.mass', share({ law: 'normal', sd: 0.03 }), 'Wall thickness and fill differ from part to part.'],
  [
    'part.stiffness',
    share({ law: 'lognormal', factor: 1.15 }),
    'Stiffness goes with a power of the wall thickness, so it scatters more than size.',
  ],
  [
    'part.markForce',
    share({ law: 'normal', sd: 0.1 }),
    'Limits of damage are tried on a handful of parts and differ widely.',
  ],
  [
    'part.yieldForce',
    share({ law: 'normal', sd: 0.1 }),
    'Limits of damage are tried on a handful of parts and differ widely.',
  ],
  [
    'part.crackForce',
    share({ law: 'lognormal', factor: 1.25 }),
    'Brittle parts break at their worst flaw, so their strength scatters widely.',
  ],
  [
    'jaws.friction.static',
    share({ law: 'lognormal', factor: 1.15 }),
    'Dust, moisture and wear of the pads change their friction from day to day.',
  ],
]

export const gripStudy: JobStudy<GripJudgement> = {
  told: ['peakForce', 'settledForce', 'holdMargin', 'damageMargin'],
  histograms: ['peakForce', 'settledForce'],
  margins: (_, { metrics }) => [metrics.holdMargin, metrics.damageMargin],
  // Where nothing is known of the hold, a distance from damage alone would promise too much.
  spare: (_, { metrics: { holdMargin, damageMargin } }) =>
    holdMargin === null ? null : nearest([holdMargin, damageMargin]),
  window: forceWindow,
  mapped: [
    'part.stiffness',
    'approach.speed',
    'part.crackForce',
    'part.markForce',
    'part.yieldForce',
    'jaws.friction.static',
    'part.mass',
    'part.width',
  ],
  usual: USUAL,
}
