/** Force that holds against a fixed jaw where the axis yields to the arm: the arm moves part and driven mass as one (statics). */
import { describe, expect, it } from 'vitest'
import { forceWindow, type Scenario, simulateGrip } from '../../sim/index.ts'
import { bareJaws, runOpenLoop, scenarioOf, type Tree } from './support.ts'

const PART = 0.3
const DRIVEN = 0.5
const A = 25
/** Jaw and motor of 0.5 kg, nothing of it turning, without friction; the arm takes the body away from the part. */
const grip = (...more: Tree[]): Scenario =>
  scenarioOf(
    bareJaws(DRIVEN),
    {
      actuator: { motor: { movingMass: 0.2 }, transmission: { viscous: 30 } },
      jaws: { layout: 'anvil', mass: DRIVEN - 0.2, opening: 0.072, padStiffness: 2e5 },
      part: { mass: PART, damping: 1 },
      arm: { gravity: 'none', moves: [{ start: 0.6, axis: 'along', acceleration: A, duration: 1.2, jerk: 100 }] },
      run: { duration: 2 },
    },
    ...more,
  )
/** The first half of a move pulls the jaw open, the second presses it on. */
const NEEDED = (PART + DRIVEN) * A

describe('an axis that only gives a force', () => {
  it('needs (m + M)·a, and the window says that it is because the axis yields; one that keeps its place needs m·a/2', () => {
    const window = forceWindow(grip())
    expect(window.least! / NEEDED).toBeCloseTo(1, 9)
    expect(window.yields).toBe(true)
    expect(window.leastStiff! / ((PART * A) / 2)).toBeCloseTo(1, 9)
  })

  it('comes loose just below that force and not just above it', () => {
    const run = (share: number) => runOpenLoop(grip(), () => share * NEEDED)
    expect(run(1.03).events.loose).toBeNull()
    expect(run(0.97).events.loose).toBeGreaterThan(0.6)
  })

  it('adds gravity along the grip to what drives the jaw back, as the jaws have closed under it', () => {
    const g = 9.80665
    const window = forceWindow(grip({ arm: { gravity: 'along' } }))
    // Pull on the part g − a, on the jaw as much less the g under which it settled.
    expect(window.least! / (DRIVEN * A + PART * (A - g))).toBeCloseTo(1, 9)
  })

  it('carries friction across as well: each contact keeps what holds the weight', () => {
    const up = { start: 0.6, axis: 'across', acceleration: 5, duration: 1.2, jerk: 100 }
    const both = grip({ jaws: { friction: { static: 0.4, sliding: 0.4 } } })
    both.arm.moves.push(up as Scenario['arm']['moves'][number])
    const held = (PART * 5) / (2 * 0.4)
    expect(forceWindow(both).least! / Math.max(NEEDED, DRIVEN * A + held + (PART * A) / 2)).toBeCloseTo(1, 9)
  })

  it('does not yield where two jaws balance each other, and where a thread locks itself', () => {
    const mirrored = grip({ jaws: { layout: 'mirrored', mass: 0.15, opening: 0.074 } })
    expect(forceWindow(mirrored)).toMatchObject({ yields: false, least: (PART * A) / 2 })
    const screw = { kind: 'screw', family: undefined, motor: undefined, transmission: { threadFriction: 0.3 } }
    const { actuator: _, ...rest } = grip() as unknown as Tree
    const locked = scenarioOf(rest, { actuator: { kind: screw.kind, transmission: screw.transmission } })
    expect(forceWindow(locked)).toMatchObject({ yields: false, least: (PART * A) / 2 })
  })

  it('a run at its current limit asks for that force', () => {
    const drive = { drive: { busVoltage: 2000 }, servo: { kp: 3000, kd: 30 } }
    const scenario = grip(drive, {
      approach: { speed: 0.02 },
      strategies: { currentClamp: { limit: 1.2 * NEEDED } },
      servo: { currentLimit: 1000 },
    })
    const clamp = simulateGrip(scenario, 'current-clamp').result
    expect(clamp.metrics.requiredForce! / NEEDED).toBeCloseTo(1, 2)
  })
})
