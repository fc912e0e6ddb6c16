import { describe, expect, it } from 'vitest'
import { approachCourse } from '../../sim/strategy/approach.ts'
import { sensedForce } from '../../sim/strategy/sensed-force/index.ts'
import { make } from '../scenario/make.ts'
import { drive } from './drive.ts'

const WALL = 0.01
/** A spring behind the wall [N/m]. */
const SPRING = 20_000
const felt = (position: number) => Math.max(0, (position - WALL) * SPRING)
const scenario = (edits: Record<string, unknown> = {}) => make({}, { 'run.duration': 0.8, ...edits })

/** An axis that moves exactly as the strategy wants. */
function ideal(edits: Record<string, unknown> = {}) {
  const made = scenario(edits)
  let [position, before] = [0, 0]
  const { samples } = drive(
    made,
    sensedForce,
    (time, _, wantedSpeed) => {
      position += wantedSpeed * (time - before)
      before = time
      return position
    },
    felt,
  )
  return { samples, speeds: samples.map(({ wantedSpeed }) => wantedSpeed), position }
}

describe('Sensed force', () => {
  it('takes over when the gauge feels contact, and not before', () => {
    const { samples } = ideal()
    const taken = samples.find(({ engaged }) => !Number.isNaN(engaged))!
    expect(felt(taken.position)).toBeGreaterThan(1.5)
    expect(felt(taken.position)).toBeLessThan(1.5 + SPRING * 0.05 * (1 / 4000) * 1.01)
    expect(drive(scenario(), sensedForce, (_, target) => target).engaged).toBeNaN()
  })

  it('does not take the inertia of the finger for contact: it is blanked while speeding up', () => {
    const made = scenario()
    const { profile } = approachCourse(made)
    const { samples } = drive(
      made,
      sensedForce,
      (_, target) => target,
      (position) => (position > 0 ? 3 : 0),
    )
    const { engaged } = samples.at(-1)!
    profile.at(engaged)
    expect(profile.acceleration).toBeLessThanOrEqual(0)
    profile.at(engaged - 2 / 4000)
    expect(profile.acceleration).toBeGreaterThan(0)
  })

  it('settles within its dead band of the target, and stands still there', () => {
    const { samples, speeds } = ideal()
    const force = felt(samples.at(-1)!.position)
    expect(Math.abs(force - 25)).toBeLessThanOrEqual(0.0002 / 0.0004)
    expect(speeds.at(-1)).toBe(0)
    const { least, most } = sensedForce.forceOf(scenario())
    expect(force).toBeGreaterThanOrEqual(least)
    expect(force).toBeLessThanOrEqual(most!)
  })

  it('presses no faster than its speed limit', () => {
    const { samples, speeds } = ideal({ 'strategies.sensedForce.speedLimit': 0.004 })
    samples.forEach(({ engaged }, k) => {
      if (!Number.isNaN(engaged)) expect(Math.abs(speeds[k]!)).toBeLessThanOrEqual(0.004)
    })
  })

  it('commands no more than the servo lets through', () => {
    const { samples } = drive(scenario({ 'strategies.sensedForce.velocity.kp': 1e6 }), sensedForce, () => 0)
    expect(Math.max(...samples.map(({ command }) => Math.abs(command)))).toBe(6)
  })
})
