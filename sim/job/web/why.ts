/** What `explain` has to know of a web: which tension tells of a verdict, and what rolls, idlers and ramps do to it. */
import type { Edit } from '../../scenario/index.ts'
import type { JobWhy } from '../job.ts'
import { webStiffness } from './fill.ts'
import type { WebJudgement, WebVerdict } from './result.ts'
import { webIn } from './scenario.ts'
import { tensionWindow } from './window.ts'

const FORCELESS: ReadonlySet<WebVerdict> = new Set(['unstable'])

const set = (path: string, value: unknown): Edit => ({ path, value })

export const webWhy: JobWhy<WebJudgement> = {
  figures: [
    {
      id: 'least',
      tells: (verdict) => verdict === 'slack',
      take: ({ result }) => (FORCELESS.has(result.verdict) ? null : result.metrics.leastTension),
      bound: (scenario) => tensionWindow(scenario).least,
    },
    {
      id: 'most',
      tells: () => true,
      take: ({ result }) => (FORCELESS.has(result.verdict) ? null : result.metrics.mostTension),
      bound: (scenario) => {
        const { most, tears } = tensionWindow(scenario)
        return Math.min(most, tears ?? Number.POSITIVE_INFINITY)
      },
    },
  ],
  forceless: FORCELESS,
  /** A web that tears would hide how far its tension would have gone. */
  unlosable: [set('web.breakTension', undefined)],
  causes: [
    {
      cause: 'drag',
      label: 'Drag of the idlers',
      without: 'idlers that turn by themselves',
      edits: (scenario) => {
        const { coulomb, breakaway, viscous } = webIn(scenario).idlers
        if (coulomb + breakaway + viscous === 0) return []
        return ['coulomb', 'breakaway', 'viscous'].map((key) => set(`idlers.${key}`, 0))
      },
    },
    {
      cause: 'inertia',
      label: 'Inertia in the ramps',
      without: 'all of the current for speeding up motor and roll added in advance',
      edits: () => [set('follow.inertia', 1)],
    },
    {
      cause: 'radius',
      label: 'Growth of the roll',
      without: 'a drive that reckons with the radius as it is',
      edits: (scenario) => (webIn(scenario).roll.kind === 'winds' ? [set('follow.radius', 'wound')] : []),
    },
    {
      cause: 'losses',
      label: 'Losses at speed',
      without: 'all of the axis’ viscous friction made up for',
      edits: () => [set('follow.losses', 1)],
    },
    {
      cause: 'runout',
      label: 'Roll out of round',
      without: 'a round roll',
      edits: () => [set('roll.runout', 0)],
    },
    {
      cause: 'lineRunout',
      label: 'Line’s roll out of round',
      without: 'a round roll in the line',
      edits: () => [set('line.runout', 0)],
    },
  ],
  creepBefore: (_, distance) => set('approach.creepFrom', distance),
  later: (scenario, delay) => {
    const { window, line } = webIn(scenario)
    return [
      set('window.from', window.from + delay),
      ...line.ramps.map(({ start }, n) => set(`line.ramps[${n}].start`, start + delay)),
    ]
  },
  pressed(scenario, effort) {
    const { span, roll } = webIn(scenario)
    const perMetre = webStiffness(scenario) / span.length
    return { stiffness: perMetre * roll.radius * roll.radius, travel: effort / perMetre / roll.radius }
  },
}
