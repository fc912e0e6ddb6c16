import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { approachCourse } from '../../sim/strategy/approach.ts'
import { thresholdStop } from '../../sim/strategy/threshold-stop/index.ts'
import { make } from '../scenario/make.ts'
import { drive, wallAt } from './drive.ts'

/** Touches after 10 mm, in the cruise of its profile; the wall stands there. */
const WALL = 0.01
const scenario = (edits: Record<string, unknown> = {}) => make({}, { 'run.duration': 0.6, ...edits })
const duration = (s = scenario()) => approachCourse(s).profile.duration

describe('Threshold stop', () => {
  it('does not trip on a path that it can follow', () => {
    const { samples, engaged } = drive(scenario(), thresholdStop, (_, target) => target)
    expect(engaged).toBeNaN()
    expect(samples.at(-1)?.target).toBeCloseTo(0.012, 9)
    expect(samples.at(-1)!.time).toBeGreaterThan(duration())
  })

  it('trips once, and holds the position commanded at that moment', () => {
    const { samples } = drive(scenario(), thresholdStop, wallAt(WALL))
    const trip = samples.findIndex(({ engaged }) => !Number.isNaN(engaged))
    expect(trip).toBeGreaterThan(0)
    const { engaged, target } = samples[trip]!
    expect(engaged).toBe(samples[trip]!.time)
    expect(target).toBeGreaterThan(WALL)
    for (const sample of samples.slice(trip)) expect([sample.engaged, sample.target]).toEqual([engaged, target])
  })

  it('stays tripped when the load goes and the command falls', () => {
    const { samples } = drive(scenario(), thresholdStop, (time, target) =>
      time < 0.4 ? Math.min(target, WALL) : target,
    )
    const last = samples.at(-1)!
    expect(last.engaged).toBeLessThan(0.4)
    expect(last.target).toBe(samples.find(({ engaged }) => !Number.isNaN(engaged))!.target)
  })

  it('waits until the filtered command has stood above the threshold for the confirm time', () => {
    const tripOf = (confirmTime: number, filter = 0.001) =>
      drive(
        scenario({ 'strategies.thresholdStop.confirmTime': confirmTime, 'strategies.thresholdStop.filter': filter }),
        thresholdStop,
        wallAt(WALL),
      ).engaged
    const period = 1 / 4000
    for (const wait of [0.002, 0.005, 0.02]) expect(tripOf(wait) - tripOf(0)).toBeCloseTo(wait, 3)
    expect(tripOf(0.005, 0.01)).toBeGreaterThan(tripOf(0.005, 0) + 10 * period)
  })

  it('starts the confirm time anew after every dip below the threshold', () => {
    // The wall gives way for a moment every 3 ms, the confirm time is 5 ms.
    const settings = { 'strategies.thresholdStop.confirmTime': 0.005, 'strategies.thresholdStop.filter': 0 }
    const giving = (time: number, target: number) => (time % 0.003 < 0.001 ? target + 1e-3 : Math.min(target, WALL))
    expect(drive(scenario(settings), thresholdStop, giving).engaged).toBeNaN()
    const shorter = { ...settings, 'strategies.thresholdStop.confirmTime': 0.001 }
    expect(drive(scenario(shorter), thresholdStop, giving).engaged).toBeGreaterThan(0)
  })

  it('is blanked while the profile speeds up', () => {
    const stuck = { 'strategies.thresholdStop.confirmTime': 0 }
    const { engaged, samples } = drive(scenario(stuck), thresholdStop, wallAt(0))
    const { profile } = approachCourse(scenario(stuck))
    let rising = 0
    for (let t = 0; t < 0.2; t += 1e-4) {
      profile.at(t)
      if (profile.acceleration > 0) rising = t
    }
    const above = samples.find(({ command }) => command > 1.2)!
    expect(above.time).toBeLessThan(rising) // without the blanking it would have tripped here
    expect(engaged).toBeGreaterThanOrEqual(rising)
    expect(engaged).toBeLessThan(rising + 0.005)
  })

  it('never trips below its threshold, never later for a lower one, and is limited by the servo', () => {
    const threshold = fc.double({ min: 0.05, max: 5.9, noNaN: true })
    fc.assert(
      fc.property(threshold, threshold, fc.constantFrom(0, 0.001, 0.01), (a, b, filter) => {
        const run = (value: number) => {
          const settings = { 'strategies.thresholdStop.threshold': value, 'strategies.thresholdStop.filter': filter }
          return { value, ...drive(scenario(settings), thresholdStop, wallAt(WALL)) }
        }
        const [low, high] = [run(Math.min(a, b)), run(Math.max(a, b))]
        expect(low.engaged).toBeLessThanOrEqual(high.engaged)
        for (const { value, samples, engaged } of [low, high]) {
          const before = samples.filter(({ time }) => time <= engaged).map(({ command }) => command)
          // What is held against the threshold is filtered: the command may have fallen again when that stands above.
          expect(filter === 0 ? before.at(-1)! : Math.max(...before)).toBeGreaterThan(value)
          expect(Math.max(...samples.map(({ command }) => Math.abs(command)))).toBeLessThanOrEqual(6)
        }
      }),
      { numRuns: 20, examples: [[0.12243, 0.12243, 0.001]] },
    )
    const beyond = scenario({ 'strategies.thresholdStop.threshold': 6.1 })
    expect(drive(beyond, thresholdStop, wallAt(WALL)).engaged).toBeNaN()
  })

  it('presses on with the clamp current where it is told so', () => {
    const pressing = scenario({
      'strategies.thresholdStop.afterwards': 'press',
      'strategies.currentClamp.limit': 0.8,
      'servo.ki': 1e6,
    })
    const { samples, engaged } = drive(pressing, thresholdStop, wallAt(WALL))
    expect(engaged).toBeGreaterThan(0)
    for (const { time, command } of samples) if (time > engaged) expect(command).toBeLessThanOrEqual(0.8)
    expect(samples.at(-1)?.command).toBe(0.8)
  })
})
