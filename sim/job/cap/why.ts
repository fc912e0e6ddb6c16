/** What `explain` has to know of a closure: which torque tells of a verdict, and what thread, liner and top load do to it. */
import type { Scenario } from '../../scenario/index.ts'
import type { JobWhy } from '../job.ts'
import type { CapJudgement, CapVerdict } from './result.ts'
import { capIn } from './scenario.ts'
import { allowedTorque, seatRate, torqueWindow } from './window.ts'

/** Verdicts without a torque that could be taken apart. */
const FORCELESS: ReadonlySet<CapVerdict> = new Set(['missed', 'unstable'])

export const capWhy: JobWhy<CapJudgement> = {
  figures: [
    {
      id: 'applied',
      tells: (verdict) => verdict === 'loose',
      take: ({ result }) => (FORCELESS.has(result.verdict) ? null : result.metrics.applicationTorque),
      bound: (scenario) => torqueWindow(scenario).least,
    },
    {
      id: 'peak',
      tells: () => true,
      take: ({ result }) => (FORCELESS.has(result.verdict) ? null : result.metrics.peakTorque),
      bound: allowedTorque,
    },
  ],
  forceless: FORCELESS,
  /** A thread that strips would end the torque that is to be taken apart. */
  unlosable: [{ path: 'closure.stripTorque', value: undefined }],
  causes: [
    {
      cause: 'misstart',
      label: 'Misstart of the thread',
      without: 'a closure that was started straight',
      edits: () => [{ path: 'closure.misstart', value: null }],
    },
    {
      cause: 'sticking',
      label: 'Sticking of closure and liner',
      without: 'friction at rest no higher than that of turning',
      edits: () => [{ path: 'closure.restFriction', value: 1 }],
    },
    {
      cause: 'runDown',
      label: 'Run-down torque',
      without: 'a thread that runs freely',
      edits: () => [{ path: 'closure.runDown', value: 0 }],
    },
    {
      cause: 'relaxation',
      label: 'Relaxation of the liner',
      without: 'a liner that does not creep',
      edits: () => [{ path: 'liner.relaxing', value: 0 }],
    },
  ],
  creepBefore: (_, distance) => ({ path: 'approach.creepFrom', value: distance }),
  pressed,
}

/** Turned on against the liner, the chuck's give in series. */
function pressed(scenario: Scenario, effort: number): { stiffness: number; travel: number } {
  const { chuck, closure } = capIn(scenario)
  const rate = seatRate(scenario)
  const beyond = Math.max(0, effort - closure.runDown)
  return {
    stiffness: (rate * chuck.stiffness) / (rate + chuck.stiffness),
    travel: beyond / rate + effort / chuck.stiffness,
  }
}
