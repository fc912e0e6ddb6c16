import { describe, expect, it } from 'vitest'
import { axisOf } from '../../sim/index.ts'
import { FRICTIONLESS, IDEAL, runOpenLoop, scenarioOf } from './support.ts'

/**
 * A gear that loses a share of the load it carries: forward η, backward 2 − 1/η, self-locking at η ≤ ½ (Niemann and Winter,
 * Maschinenelemente, vol. 2, worm gears; from memory).
 */
const rack = (efficiency: number, gearRatio = 5) =>
  scenarioOf(IDEAL, {
    actuator: {
      kind: 'rack',
      motor: { torqueConstant: 0.04, inertia: 1e-6 },
      transmission: { ...FRICTIONLESS, viscous: 40, efficiency, gearRatio, pinionRadius: 0.008 },
    },
    part: { damping: 1 },
  })

describe('gear and rack', () => {
  it.each([
    [0.9, 0.888889],
    [0.8, 0.75],
    [0.6, 0.333333],
  ])('η = %f runs backward with 2 − 1/η = %f', (forward, backward) => {
    const { raise, lower } = axisOf(rack(forward).actuator)
    expect(1 / (1 + raise)).toBeCloseTo(forward, 9)
    expect(1 - lower).toBeCloseTo(backward, 6)
  })

  it('locks from one half down', () => {
    expect(axisOf(rack(0.51).actuator).lower).toBeLessThan(1)
    expect(axisOf(rack(0.5).actuator).lower).toBeCloseTo(1, 12)
    expect(axisOf(rack(0.45).actuator).lower).toBeGreaterThan(1)
  })

  /** Current that rises slowly to `high` [A] by 0.6 s and from 0.7 s on falls slowly to `low`, so that no impact is left. */
  const slow = (high: number, low: number) => (time: number) =>
    time < 0.7 ? high * Math.min(1, time / 0.6) : Math.max(low, high - ((high - low) * (time - 0.7)) / 0.5)

  it('a clamp presses with K_t·I·i·η/r, shared by two contacts (closed form)', () => {
    const { traces } = runOpenLoop(rack(0.8), slow(2, 2))
    const force = (0.04 * 2 * 5 * 0.8) / 0.008 / 2
    expect(traces.force.at(-1)! / force).toBeCloseTo(1, 2)
  })

  it('given less current it keeps its force down to what drives it back with 2 − 1/η (closed form)', () => {
    const full = (0.04 * 4 * 5 * 0.8) / 0.008 / 2
    const held = runOpenLoop(rack(0.8), slow(4, 2.6)).traces // backward 0.75 over forward 1/0.8: from 0.6 of the current down
    // but for the little travel in which the flanks turn their friction round
    expect(held.force.at(-1)! / full).toBeGreaterThan(0.98)
    expect(held.force.at(-1)! / full).toBeLessThan(1.005)
    const driven = runOpenLoop(rack(0.8), slow(4, 1.6)).traces
    const back = (0.04 * 1.6 * 5) / 0.008 / 2 / 0.75 // K·I = contacts·F·(2 − 1/η)
    expect(Math.abs(driven.force.at(-1)! / back - 1)).toBeLessThan(0.01)
  })
})
