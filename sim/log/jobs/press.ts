import type { PressLoad } from '../../job/press/load.ts'
import { pressIn } from '../../job/press/scenario.ts'
import { slidingForce } from '../../job/press/window.ts'
import { riseOf } from '../touch.ts'
import type { JobLog } from './job.ts'

/** Where the joint is looked at first, as shares of the way from first touch to the highest force: behind the cone, and before a shoulder. */
const [EARLY, MIDDLE] = [0.35, 0.75]
/** The force of the joint grows evenly: so much more at the end than at nine tenths of the way is a shoulder. */
const STEEP = 1.5
const NEARLY = 0.9

export const pressLog: JobLog<PressLoad> = {
  pulled: () => true,
  effort: ['gauge', 'force'],
  edits(scenario, log) {
    const rise = riseOf(log)
    if (!rise) return []
    const { bushing, bore, ram } = pressIn(scenario)
    const last = rise.travel.length - 1
    const under = (row: number) => rise.travel[row]! - rise.effort[row]! / ram.stiffness
    const end = under(last) - rise.travel[0]!
    const rowAt = (share: number) => {
      const row = rise.travel.findIndex((_, k) => under(k) - rise.travel[0]! >= share * end)
      return row < 0 ? last : row
    }
    const [early, middle] = [rowAt(EARLY), rowAt(MIDDLE)]
    const wanted = rise.effort[early]! / rise.effort[middle]!
    // The later it is met, the less deep both are: the shallow one loses the larger share of its force.
    let [low, high] = [rise.travel[0]! - end, under(early)]
    for (let n = 0; n < 50; n++) {
      const gap = (low + high) / 2
      const ratio = slidingForce(scenario, under(early) - gap) / slidingForce(scenario, under(middle) - gap)
      if (ratio > wanted) low = gap
      else high = gap
    }
    const usual = slidingForce(scenario, under(middle) - low)
    const seats = bore.shoulder !== null && rise.effort[last]! > STEEP * rise.effort[rowAt(NEARLY)]!
    return [
      { path: 'ram.gap', value: low },
      ...(usual > 0 && bushing.interference > 0
        ? [{ path: 'bushing.interference', value: (bushing.interference * rise.effort[middle]!) / usual }]
        : []),
      ...(seats ? [{ path: 'bore.shoulder.depth', value: under(last) - low }] : []),
    ]
  },
  paths(scenario, logs) {
    const seats = logs.some((log) => this.edits(scenario, log).some(({ path }) => path === 'bore.shoulder.depth'))
    return ['ram.gap', 'bushing.interference', ...(seats ? ['bore.shoulder.depth', 'ram.stiffness'] : [])]
  },
  most: (scenario, path) => (path === 'joint.friction.pressing' ? pressIn(scenario).joint.friction.static : undefined),
  free: [
    'ram.gap',
    'ram.stiffness',
    'bushing.interference',
    'bushing.tilt',
    'bushing.chamfer.angle',
    'joint.friction.pressing',
    'bore.shoulder.depth',
    'bore.shoulder.stiffness',
  ],
}
