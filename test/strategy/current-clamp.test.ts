import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { currentClamp } from '../../sim/strategy/current-clamp/index.ts'
import { make } from '../scenario/make.ts'
import { drive, machineFor, wallAt } from './drive.ts'

const WALL = 0.01
const scenario = (edits: Record<string, unknown> = {}) => make({}, { 'run.duration': 0.6, ...edits })

describe('Current clamp', () => {
  it('never commands more than its limit, wherever the axis is and however fast it gets there', () => {
    const limit = fc.double({ min: 0.001, max: 9, noNaN: true })
    const positions = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 80 })
    fc.assert(
      fc.property(limit, positions, (value, path) => {
        const clamped = scenario({ 'strategies.currentClamp.limit': value })
        const strategy = machineFor(clamped, currentClamp)
        path.forEach((position, k) => {
          const command = strategy.tick(k / 4000, position, 0)
          expect(Math.abs(command)).toBeLessThanOrEqual(Math.min(value, 6))
          expect(strategy.saturated()).toBe(Math.abs(command) < Math.min(value, 6) ? 0 : Math.sign(command))
        })
      }),
    )
  })

  it('follows the profile into the part and presses with its limit there', () => {
    const { samples } = drive(scenario(), currentClamp, wallAt(WALL))
    const last = samples.at(-1)!
    expect(last.command).toBe(1.2)
    expect(last.target).toBeCloseTo(0.012, 9)
    expect(last.engaged).toBeGreaterThan(0.2)
    const since = samples.filter(({ time }) => time >= last.engaged)
    expect(since.every(({ command }) => command === 1.2)).toBe(true)
  })

  it('is not engaged where nothing stops it, nor while it speeds up', () => {
    expect(drive(scenario(), currentClamp, (_, target) => target).engaged).toBeNaN()
    const weak = scenario({ 'servo.accelerationFeedforward': 10, 'strategies.currentClamp.limit': 0.5 })
    const { samples } = drive(weak, currentClamp, (_, target) => target)
    const first = samples.findIndex(({ command }) => command === 0.5)
    expect(first).toBeGreaterThan(0)
    expect(samples[first]!.engaged).toBeNaN()
  })

  it('lets go of its claim when the axis follows again', () => {
    const path = (time: number, target: number) => (time < 0.45 ? Math.min(target, WALL) : target + 1e-3)
    const { samples, engaged } = drive(scenario(), currentClamp, path)
    expect(samples.some(({ engaged }) => engaged > 0)).toBe(true)
    expect(engaged).toBeNaN()
  })

  it('clamps only from the set opening on; before it the current of the servo holds', () => {
    // The jaws open 90 mm; 80 mm between the pads are 5 mm of travel of each.
    const from = scenario({ 'strategies.currentClamp.from': 0.08, 'strategies.currentClamp.limit': 0.5 })
    const before = drive(from, currentClamp, wallAt(0.0049)).samples.at(-1)!
    expect(before.command).toBe(6)
    const within = drive(from, currentClamp, wallAt(0.0051)).samples.at(-1)!
    expect(within.command).toBe(0.5)
  })
})
