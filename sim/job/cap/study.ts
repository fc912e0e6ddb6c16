/** What a study of many closures has to know: what it tells, what there is to spare, and how closures and liners usually vary. */
import type { JobStudy } from '../job.ts'
import { nearest } from '../moments.ts'
import { share, type Usual } from '../usual.ts'
import type { CapJudgement } from './result.ts'
import { allowedTorque, torqueWindow } from './window.ts'

const USUAL: readonly Usual[] = [
  [
    'closure.threadFriction',
    share({ law: 'lognormal', factor: 1.2 }),
    'Moulding, dust and product on the neck change the friction of the thread.',
  ],
  [
    'closure.faceFriction',
    share({ law: 'lognormal', factor: 1.2 }),
    'Liners differ in slip agent and moisture, and so in friction.',
  ],
  [
    'liner.stiffness',
    share({ law: 'lognormal', factor: 1.2 }),
    'Liners differ in thickness and mixture, so in how steeply the torque rises.',
  ],
  [
    'closure.stripTorque',
    share({ law: 'normal', sd: 0.08 }),
    'Threads are tried on a handful of closures and strip at different torques.',
  ],
  [
    'chuck.startAngle',
    { law: 'uniform', half: Math.PI / 2, share: false },
    'Necks come to the head turned any way, so the thread begins sooner or later.',
  ],
]

export const capStudy: JobStudy<CapJudgement> = {
  told: ['applicationTorque', 'peakTorque', 'removalAfter', 'torqueMargin', 'stripMargin'],
  histograms: ['applicationTorque', 'peakTorque'],
  margins(scenario, { metrics }) {
    const { least, most } = torqueWindow(scenario)
    const { applicationTorque, stripMargin } = metrics
    const applied = applicationTorque ?? 0
    return [
      least > 0 ? applied / least - 1 : null,
      most === null || applied === 0 ? null : most / applied - 1,
      stripMargin,
    ]
  },
  spare: (scenario, result) => nearest(capStudy.margins(scenario, result)),
  window(scenario) {
    const { least } = torqueWindow(scenario)
    const most = allowedTorque(scenario)
    return { least: least > 0 ? least : null, most: most < Number.POSITIVE_INFINITY ? most : null }
  },
  mapped: ['closure.threadFriction', 'approach.speed', 'liner.stiffness', 'closure.faceFriction'],
  usual: USUAL,
}
