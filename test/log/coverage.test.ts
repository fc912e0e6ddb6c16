/**
 * Logs of axes that are integrated anew, without a line of sim, under known values, with a recorder that is late, coarse and noisy: how
 * often the truth lies in the interval that the fit states, and how far the values lie from it on average.
 */
import { describe, expect, it } from 'vitest'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { core, run } from '../../sim/cli/core.ts'
import { identify } from '../../sim/log/identify.ts'
import { FREE, logOf, scenario } from './case.ts'

const LOGS = 300

describe('truth in the interval', () => {
  it(`of ${LOGS} logs, for each quantity`, { timeout: 0 }, async () => {
    const paths = Object.keys(FREE)
    const inside = paths.map(() => 0)
    const off = paths.map(() => 0)
    const width = paths.map(() => 0)
    for (let seed = 1; seed <= LOGS; seed++) {
      const { values } = await identify(scenario, [logOf(seed)], { free: paths }, crewHere(run, core))
      for (const [p, path] of paths.entries()) {
        const { value, low, high } = values[p]!
        const truth = FREE[path]!
        inside[p]! += truth >= low! && truth <= high! ? 1 : 0
        off[p]! += (value - truth) / LOGS
        width[p]! += (high! - low!) / LOGS
      }
    }
    for (const [p, path] of paths.entries()) {
      expect(inside[p]! / LOGS, path).toBeGreaterThanOrEqual(0.92)
      expect(inside[p]! / LOGS, path).toBeLessThanOrEqual(0.98)
      expect(Math.abs(off[p]!), path).toBeLessThan(width[p]! / 5)
    }
  })
})
