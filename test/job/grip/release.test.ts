import { describe, expect, it } from 'vitest'
import { core } from '../../../sim/cli/core.ts'
import { simulateGrip } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const OPENING = { 'arm.moves': [], 'arm.lift': 0.3, 'run.duration': 0.7 }

describe('the release of a part', () => {
  it('is when the opening jaws no longer press it, and not when they set out to open', () => {
    const opened = quick({ ...OPENING, 'events.release': { time: 0.45 } })
    const { result, traces } = simulateGrip(opened, 'current-clamp', { core })
    const bare = traces.time.findIndex((time, row) => time > 0.45 && traces.force[row]! + traces.farForce[row]! === 0)
    const { release } = result.events
    expect(release!).toBeGreaterThan(0.45)
    // A bucket of the record keeps two samples of its time.
    expect(Math.abs(release! - traces.time[bare]!)).toBeLessThan(2 * (traces.time[bare]! - traces.time[bare - 2]!))
  })

  it('does not happen where nobody opens, though no jaw touches the part at first', () => {
    expect(simulateGrip(quick(OPENING), 'current-clamp', { core }).result.events.release).toBeNull()
  })
})
