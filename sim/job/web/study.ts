/** What a study of many webs has to know: what it tells, what there is to spare, and how webs, rolls and idlers usually vary. */
import type { JobStudy } from '../job.ts'
import { nearest } from '../moments.ts'
import { share, type Usual } from '../usual.ts'
import type { WebJudgement } from './result.ts'
import { tensionWindow } from './window.ts'

const USUAL: readonly Usual[] = [
  [
    'web.modulus',
    share({ law: 'lognormal', factor: 1.1 }),
    'Paper and film differ in stiffness from reel to reel, and paper with its moisture.',
  ],
  ['web.thickness', share({ law: 'normal', sd: 0.03 }), 'Thickness keeps to a few per cent along and across a reel.'],
  [
    'idlers.coulomb',
    share({ law: 'lognormal', factor: 1.4 }),
    'Bearings of idlers differ, age, and drag more when they are cold.',
  ],
  [
    'span.entryTension',
    share({ law: 'normal', sd: 0.15 }),
    'What unwinds before the line holds its own tension no better than its brake does.',
  ],
  ['roll.runout', share({ law: 'lognormal', factor: 1.5 }), 'Cores and rolls differ in how far they run out of true.'],
  ['web.slack', share({ law: 'lognormal', factor: 1.5 }), 'Whoever threads the web leaves it hanging more or less.'],
]

export const webStudy: JobStudy<WebJudgement> = {
  told: ['meanTension', 'leastTension', 'mostTension', 'tensionRipple', 'slackMargin', 'stretchMargin'],
  histograms: ['meanTension', 'leastTension', 'mostTension'],
  margins(scenario, { metrics }) {
    const { least } = tensionWindow(scenario)
    const { slackMargin, stretchMargin, breakMargin, leastTension } = metrics
    return [least > 0 ? (leastTension === null ? -1 : slackMargin) : null, stretchMargin, breakMargin]
  },
  spare: (scenario, result) => nearest(webStudy.margins(scenario, result)),
  window(scenario) {
    const { least, most, from, tears } = tensionWindow(scenario)
    return { least: least > 0 ? least : null, most: Math.min(most, tears ?? Number.POSITIVE_INFINITY), from }
  },
  mapped: ['roll.inertia', 'web.modulus', 'idlers.coulomb', 'span.length', 'approach.speed'],
  usual: USUAL,
}
