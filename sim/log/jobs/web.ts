import type { WebLoad } from '../../job/web/load.ts'
import { webIn } from '../../job/web/scenario.ts'

import { riseOf } from '../touch.ts'
import type { JobLog } from './job.ts'

/** Shares of the highest tension at standstill between which the web is taken for a straight spring. */
const [LOW, HIGH] = [0.2, 0.8]

export const webLog: JobLog<WebLoad> = {
  pulled: () => false,
  effort: ['gauge', 'tension'],
  always: true,
  // The drive works in the travel of the line and adds what its roll takes: what it is told is no place to be held.
  drivenBy: 'current',
  edits(scenario, log) {
    const { web, span, roll, line } = webIn(scenario)
    const { time } = log.measured
    const stands = line.ramps[0]?.start ?? Number.POSITIVE_INFINITY
    const moving = time.findIndex((t) => t - time[0]! >= stands)
    const rise = riseOf(cutAt(log, moving < 0 ? time.length : moving))
    if (!rise) return []
    const most = rise.effort.at(-1)!
    const rowAt = (share: number) => rise.effort.findIndex((tension) => tension >= share * most)
    const [low, high] = [rowAt(LOW), rowAt(HIGH)]
    const drawn = roll.radius * (rise.travel[high]! - rise.travel[low]!)
    if (!(drawn > 0)) return []
    // At standstill L·dT/dt = E·A·v.
    const rate = (rise.effort[high]! - rise.effort[low]!) / drawn
    return [
      { path: 'web.modulus', value: (rate * span.length) / (web.width * web.thickness) },
      { path: 'web.slack', value: roll.radius * rise.travel[low]! - rise.effort[low]! / rate },
    ]
  },
  paths: () => ['web.modulus', 'web.slack'],
  free: ['web.modulus', 'web.slack', 'web.damping', 'span.entryTension', 'span.length', 'roll.radius', 'roll.inertia'],
}

/** A log as far as a row. */
function cutAt({ measured, ...log }: Parameters<JobLog['edits']>[1], end: number) {
  const channels = Object.fromEntries(
    Object.entries(measured.channels).map(([channel, values]) => [channel, values.slice(0, end)]),
  )
  return { ...log, measured: { ...measured, time: measured.time.slice(0, end), channels } }
}
