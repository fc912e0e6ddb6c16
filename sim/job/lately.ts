/** What somebody who looks on at the end of a run can say of its last moments: how far something has got since, and its effort then. */
import { Block, State } from '../core/block.ts'
import { SETTLED } from './sums.ts'

class LatelyState extends State {
  /** As the present settled window began, and the one before it: when [s], how far [m or rad] and with what effort [N or N·m]. */
  since: f64 = 0
  place: f64 = 0
  effort: f64 = 0
  sinceBefore: f64 = 0
  placeBefore: f64 = 0
  effortBefore: f64 = 0
}

export class Lately extends Block {
  readonly state: LatelyState = new LatelyState()

  /** Once a sample, at `time` [s]; `effort` never falls. */
  note(time: f64, place: f64, effort: f64): void {
    const s = this.state
    if (time - s.since < SETTLED) return
    s.sinceBefore = s.since
    s.placeBefore = s.place
    s.effortBefore = s.effort
    s.since = time
    s.place = place
    s.effort = effort
  }
}
