/** A second formulation of a wound web that shares no code with the simulator, beside whole runs of it. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { startInertia, webStiffness, woundInertia } from '../../../sim/job/web/fill.ts'
import { webIn } from '../../../sim/job/web/scenario.ts'
import { tensions } from '../../independent/web.ts'
import { IDEAL, pulled, webOf } from './support.ts'

/** A ramp whose acceleration rises and falls by a jerk at once: linear in time [m/s]. */
const BEGIN = 1.2
const SPEED = 1

it('follows the torque through a ramp while the roll grows, as a second formulation does', () => {
  fc.assert(
    fc.property(
      fc.record({
        thickness: fc.double({ min: 5e-5, max: 4e-4, noNaN: true }),
        length: fc.double({ min: 0.4, max: 3, noNaN: true }),
        entryTension: fc.double({ min: 0, max: 20, noNaN: true }),
        limit: fc.double({ min: 3, max: 8, noNaN: true }),
        acceleration: fc.double({ min: 0.2, max: 1, noNaN: true }),
      }),
      ({ thickness, length, entryTension, limit, acceleration }) => {
        const scenario = webOf(IDEAL, {
          web: { width: 0.5, thickness, modulus: 1e9, density: 800, damping: 0.005, slack: 0.0005 },
          span: { length, entryTension },
          roll: { kind: 'winds', radius: 0.1, coreRadius: 0.05, inertia: 0.01 },
          line: { ramps: [{ start: BEGIN, speed: SPEED, acceleration, jerk: 1e4 }] },
          follow: { inertia: 0, losses: 0, radius: 'start' },
          strategies: { currentClamp: { limit } },
          run: { duration: 3 },
        })
        const { result, traces } = pulled(scenario)
        expect(result.verdict).not.toBe('unstable')
        const rows = [...traces.time.keys()].filter((n) => traces.time[n]! >= BEGIN - 0.05)
        const picked = rows.filter((_, n) => n % 40 === 0)
        const { tension } = traces as unknown as Record<string, Float64Array>
        const idlers = webIn(scenario).idlers.mass * 0.01
        const perRadius = woundInertia(scenario)
        const expected = tensions(
          {
            stiffness: webStiffness(scenario),
            length,
            entry: entryTension / webStiffness(scenario),
            damping: 0.005,
            radius: 0.1,
            core: 0.05,
            perRadius,
            thickness,
            inertia: 0.01 + idlers + 0.001,
            torque: limit,
            line: (time) => Math.min(SPEED, Math.max(0, acceleration * (time - BEGIN))),
          },
          picked.map((n) => traces.time[n]!),
        )
        expect(startInertia(scenario)).toBeCloseTo(0.01 + idlers + perRadius * (0.1 ** 4 - 0.05 ** 4), 9)
        // The jerk, the current loop and the shaft lie between; at the corners of the ramp they count most.
        for (const [n, row] of picked.entries())
          expect(Math.abs(tension![row]! - expected[n]!)).toBeLessThan(0.02 * (limit / 0.1))
      },
    ),
    { numRuns: 6, seed: 20261127, endOnFailure: true },
  )
})
