/** What `explain` has to know of a grip: which force tells of a verdict, and what the part and the pads do to it. */
import type { JobWhy } from '../job.ts'
import { contactsOf } from './geometry.ts'
import type { GripJudgement, Verdict } from './result.ts'
import { jawStiffness, springsAt } from './statics.ts'
import { damageLimit } from './window.ts'

/** Verdicts on too little force: what is asked then is why the grip is so weak. */
const LOST: ReadonlySet<Verdict> = new Set(['slipped', 'loose', 'dropped'])

/** Verdicts without a force that could be taken apart. */
const FORCELESS: ReadonlySet<Verdict> = new Set(['missed', 'unstable'])

export const gripWhy: JobWhy<GripJudgement> = {
  figures: [
    {
      id: 'hold',
      tells: (verdict) => LOST.has(verdict),
      take: ({ result, weakest }) => (FORCELESS.has(result.verdict) ? null : weakest),
      bound: (_, run) => run().result.metrics.requiredForce,
    },
    {
      id: 'peak',
      tells: () => true,
      take: ({ result }) => (FORCELESS.has(result.verdict) ? null : result.metrics.peakForce),
      bound: damageLimit,
    },
  ],
  forceless: FORCELESS,
  /** Damage limits and a slide would end the force that is to be taken apart: the longest pad, the highest friction. */
  unlosable: [
    { path: 'part.markForce', value: undefined },
    { path: 'part.crackForce', value: undefined },
    { path: 'part.yieldForce', value: undefined },
    { path: 'jaws.padLength', value: 1 },
    { path: 'jaws.friction.static', value: 3 },
    { path: 'jaws.friction.sliding', value: 3 },
    { path: 'jaws.friction.loadExponent', value: 1 },
  ],
  causes: [
    {
      cause: 'relaxation',
      label: 'Relaxation of the part',
      without: 'a part that does not relax',
      edits: () => [{ path: 'part.relaxation.fraction', value: 0 }],
    },
  ],
  creepBefore: (scenario, distance) => ({
    path: 'approach.creepFrom',
    value: scenario.part.width + contactsOf(scenario) * distance,
  }),
  pressed(scenario, force) {
    const springs = springsAt(scenario, force)
    return {
      stiffness: jawStiffness(scenario, springs),
      travel: springs.squeeze * (contactsOf(scenario) === 2 ? 1 : 2),
    }
  },
}
