/** What a study of many joints has to know: what it tells, what there is to spare, and how bushings and bores usually vary. */
import type { Scenario } from '../../scenario/index.ts'
import type { JobStudy } from '../job.ts'
import { nearest } from '../moments.ts'
import { share, type Usual } from '../usual.ts'
import { seatDepth } from './fill.ts'
import type { PressJudgement, PressMetrics } from './result.ts'
import { pressIn } from './scenario.ts'
import { allowedForce, jointWindow, neededForce } from './window.ts'

const USUAL: readonly Usual[] = [
  [
    'bushing.interference',
    { law: 'normal', sd: 2e-6, share: false },
    'Bushing and bore each vary within their tolerance; of an H7 bore and a p6 bushing of this size some micrometres are left of both.',
  ],
  [
    'joint.friction.pressing',
    share({ law: 'lognormal', factor: 1.15 }),
    'Oil, burrs and roughness change the friction of a joint from part to part.',
  ],
  [
    'bushing.tilt',
    { law: 'triangular', low: 0, mode: 0, high: 0.002, share: false },
    'A holder lets a bushing stand askew by a tenth of a degree.',
  ],
  [
    'bore.outerDiameter',
    share({ law: 'normal', sd: 0.01 }),
    'A cast wall around a bore differs with the core and its place.',
  ],
  [
    'bore.modulus',
    share({ law: 'normal', sd: 0.04 }),
    'Cast metals differ in stiffness with their structure; wrought ones hardly do.',
  ],
  [
    'bore.shoulder.depth',
    { law: 'normal', sd: 0.00002, share: false },
    'A turned or milled shoulder keeps its place to some hundredths of a millimetre.',
  ],
  [
    'ram.gap',
    { law: 'normal', sd: 0.00005, share: false },
    'Holder and blank let the bore begin some hundredths of a millimetre sooner or later.',
  ],
]

export const pressStudy: JobStudy<PressJudgement> = {
  told: ['peakForce', 'settledForce', 'seatForce', 'depth', 'bandMargin', 'forceMargin'],
  histograms: ['peakForce', 'settledForce', 'seatForce'],
  margins: (scenario, { metrics }) => [
    metrics.bandMargin,
    metrics.forceMargin,
    ...seatMargins(scenario, metrics),
    depthMargin(scenario, metrics),
  ],
  spare: (scenario, result) => nearest(pressStudy.margins(scenario, result)),
  window(scenario) {
    const [least, most] = [neededForce(scenario), allowedForce(scenario)]
    return { least: least > 0 ? least : null, most: most < Number.POSITIVE_INFINITY ? most : null }
  },
  mapped: ['bushing.interference', 'joint.friction.pressing', 'approach.speed', 'bushing.tilt', 'ram.stiffness'],
  usual: USUAL,
}

function seatMargins(scenario: Scenario, { seatForce }: PressMetrics): (number | null)[] {
  const { least, most } = jointWindow(scenario).seat
  return [
    least === null ? null : (seatForce ?? 0) / least - 1,
    most === null || !seatForce ? null : most / seatForce - 1,
  ]
}

/**
 * Of half the width between least and most depth, or of the least alone. A bushing on its shoulder has all the depth that there is, so
 * it spares none: where the shoulder lies deep enough, how hard it is pressed there counts alone.
 */
function depthMargin(scenario: Scenario, { depth, seatForce }: PressMetrics): number | null {
  const { least, most } = jointWindow(scenario).depth
  const given = depth ?? 0
  const faces = pressIn(scenario).bore.shoulder !== null && seatForce !== null
  if (faces && given >= least && given <= (most ?? Infinity) && seatDepth(scenario) >= least) return null
  if (most === null || most <= least) return least > 0 ? given / least - 1 : null
  return Math.min(given - least, most - given) / ((most - least) / 2)
}
