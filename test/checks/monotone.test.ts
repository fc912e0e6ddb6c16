import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import { simulateGrip } from '../../sim/index.ts'
import { quick } from '../grip/scenarios.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const RUNS = { numRuns: 40, seed: 7 }

describe('facts that hold whatever the numbers', () => {
  /** Closed form: F0 + √(F0² + k·m·v²) grows with v (the impact factor of strength texts). */
  it('a slower approach never raises the first impact of a clamp on a linear part without friction', () => {
    // The way is long enough to reach the speed: on a shorter one the jaws touch while they gain speed, and a faster setting may touch softer.
    const smooth = {
      'jaws.opening': 0.078,
      'approach.acceleration': 20,
      'approach.jerk': 20_000,
      'run.duration': 0.8,
      'arm.lift': 0.6,
      'actuator.transmission.coulomb': 0,
      'actuator.transmission.breakaway': 0,
      'actuator.transmission.threadFriction': 0,
      'drive.currentNoise': 0,
      'drive.currentResolution': 0,
      'sensors.encoder.resolution': 0,
      'part.crackForce': undefined,
      'arm.gravity': 'none',
    }
    const peak = (edits: Record<string, unknown>, speed: number) => {
      const { metrics, stepError } = simulateGrip(
        quick({ ...smooth, ...edits, 'approach.speed': speed }),
        'current-clamp',
        {
          core,
          stepError: true,
        },
      ).result
      return { force: metrics.peakForce!, error: stepError! }
    }
    fc.assert(
      fc.property(
        between(0.012, 0.1),
        between(1.1, 3),
        between(3e4, 3e5),
        between(0.5, 2.5),
        between(0, 0.5),
        (slow, factor, stiffness, limit, damping) => {
          const edits = {
            'part.stiffness': stiffness,
            'part.damping': damping,
            'strategies.currentClamp.limit': limit,
          }
          const at = peak(edits, slow)
          const faster = peak(edits, slow * factor)
          expect(at.force).toBeLessThanOrEqual(faster.force * (1 + at.error + faster.error))
        },
      ),
      RUNS,
    )
  })

  /** Coulomb: what sticks at µ sticks at more than µ (closed form). */
  it('a higher pad friction never causes a slip', () => {
    fc.assert(
      fc.property(
        between(0.05, 1),
        between(1.02, 3),
        between(0.5, 1),
        between(0.05, 2),
        between(2, 30),
        (low, factor, sliding, mass, acceleration) => {
          const moves = [{ start: 0.28, axis: 'across', acceleration, duration: 0.1, jerk: 5000 }]
          const slid = (friction: number) => {
            const { metrics, events } = simulateGrip(
              quick({
                'arm.moves': moves,
                'part.mass': mass,
                'part.crackForce': undefined,
                'jaws.friction.static': friction,
                'jaws.friction.sliding': sliding * friction,
              }),
              'current-clamp',
              { core },
            ).result
            return { distance: metrics.slipDistance ?? 0, slips: events.slip !== null, drops: events.drop !== null }
          }
          const rough = slid(low * factor)
          const smooth = slid(low)
          if (!smooth.slips) expect(rough.slips).toBe(false)
          if (!smooth.drops) expect(rough.distance).toBeLessThanOrEqual(smooth.distance)
        },
      ),
      RUNS,
    )
  })
})
