import { contactsOf } from '../../job/grip/geometry.ts'
import type { GripLoad } from '../../job/grip/load.ts'
import { gripWhy } from '../../job/grip/why.ts'
import { riseOf, touchOf } from '../touch.ts'
import type { JobLog } from './job.ts'

/** Time that a part must be held for its relaxation to show [s]. */
const HELD = 0.3

const RELAXATION = ['part.relaxation.fraction', 'part.relaxation.time']
const PART = ['part.width', 'part.stiffness', 'part.exponent', 'part.damping']

export const gripLog: JobLog<GripLoad> = {
  pulled: ({ jaws }) => jaws.layout === 'anvil',
  effort: ['gauge', 'force'],
  quieten: (load) => {
    load.liftTime = Number.POSITIVE_INFINITY
  },
  edits(scenario, log) {
    const rise = riseOf(log)
    if (!rise) return []
    const force = rise.effort.at(-1)!
    const travel = rise.travel.at(-1)! - rise.travel[0]!
    let { stiffness } = scenario.part
    for (let n = 0; n < 60; n++) {
      const tried = { ...scenario, part: { ...scenario.part, stiffness } }
      const ratio = gripWhy.pressed(tried, force).travel / travel
      if (!(ratio > 0) || Math.abs(ratio - 1) < 1e-3) break
      stiffness = Math.min(1e13, Math.max(10, stiffness * Math.min(4, Math.max(0.25, ratio ** scenario.part.exponent))))
    }
    return [
      { path: 'part.width', value: scenario.jaws.opening - contactsOf(scenario) * rise.travel[0]! },
      { path: 'part.stiffness', value: stiffness },
    ]
  },
  paths(_scenario, logs) {
    const holds = logs.some((log) => {
      const { time } = log.measured
      return time.at(-1)! - (time[touchOf(log)] ?? Number.POSITIVE_INFINITY) > HELD
    })
    return [...PART, ...(holds ? RELAXATION : [])]
  },
  free: [...PART, ...RELAXATION],
}
