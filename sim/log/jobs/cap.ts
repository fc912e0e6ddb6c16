import type { CapLoad } from '../../job/cap/load.ts'
import { capIn } from '../../job/cap/scenario.ts'
import { seatRate } from '../../job/cap/window.ts'
import { riseOf } from '../touch.ts'
import type { JobLog } from './job.ts'

/** Shares of the highest torque between which the liner is taken for a straight line. */
const [LOW, HIGH] = [0.4, 0.9]

export const capLog: JobLog<CapLoad> = {
  pulled: () => false,
  effort: ['gauge', 'torque'],
  edits(scenario, log) {
    const rise = riseOf(log)
    if (!rise) return []
    const { closure, liner } = capIn(scenario)
    const start = rise.travel[0]!
    const most = rise.effort.at(-1)!
    const rowAt = (share: number) => rise.effort.findIndex((torque) => torque >= share * most)
    const [low, high] = [rowAt(LOW), rowAt(HIGH)]
    const turned = rise.travel[high]! - rise.travel[low]!
    if (!(turned > 0)) return [{ path: 'chuck.startAngle', value: start }]
    const rate = (rise.effort[high]! - rise.effort[low]!) / turned
    const seat = rise.travel[low]! - (rise.effort[low]! - closure.runDown) / rate
    return [
      { path: 'chuck.startAngle', value: start },
      ...(seat > start ? [{ path: 'closure.engagement', value: seat - start }] : []),
      { path: 'liner.stiffness', value: (liner.stiffness * rate) / seatRate(scenario) },
    ]
  },
  paths: () => ['chuck.startAngle', 'closure.runDown', 'closure.engagement', 'liner.stiffness'],
  free: [
    'chuck.startAngle',
    'chuck.stiffness',
    'closure.runDown',
    'closure.engagement',
    'closure.threadFriction',
    'closure.faceFriction',
    'liner.stiffness',
    'liner.relaxing',
    'liner.relaxationTime',
  ],
}
