import { describe, expect, it } from 'vitest'
import { frameAt, restFrame } from '../../../../app/picture/grip/frameAt.ts'
import { rowAt } from '../../../../app/picture/rowAt.ts'
import { PRESETS, simulateGrip } from '../../../../sim/index.ts'
import { resultOf, scenarioOf, tracesOf } from './support.ts'

const scenario = scenarioOf({ jaws: { padStiffness: 1e5 }, part: { markForce: 30, crackForce: 60 } })
const run = {
  scenario,
  result: null,
  traces: tracesOf({
    time: [0, 0.1, 0.3, 0.3, 0.5],
    force: [0, 10, 30, 50, 20],
    travel: [0, 0.001, 0.003, 0.003, 0.005],
  }),
  rows: 5,
}

describe('row of a time', () => {
  it('is found by bisection, also between rows of the same time and beyond the ends', () => {
    const { time } = run.traces
    expect(rowAt(time, 5, 0.2).index).toBe(1)
    expect(rowAt(time, 5, 0.2).fraction).toBeCloseTo(0.5)
    expect(rowAt(time, 5, 0.3)).toEqual({ index: 3, fraction: 0 })
    expect(rowAt(time, 5, -1)).toEqual({ index: 0, fraction: 0 })
    expect(rowAt(time, 5, 9)).toEqual({ index: 4, fraction: 0 })
    expect(rowAt(time, 2, 9)).toEqual({ index: 1, fraction: 0 })
  })
})

describe('frame of a run', () => {
  it('is linear between rows', () => {
    const frame = frameAt(run, 0.2)
    expect(frame.force).toBeCloseTo(20)
    expect(frame.travel).toBeCloseTo(0.002, 9)
    expect(frame.time).toBe(0.2)
  })

  it('stands at the last row that has come in', () => {
    const frame = frameAt({ ...run, rows: 2 }, 0.4)
    expect(frame.time).toBeCloseTo(0.1)
    expect(frame.force).toBe(10)
  })

  it('is the open gripper where nothing has been run', () => {
    expect(frameAt({ ...run, traces: null, rows: 0 }, 0.4)).toEqual(restFrame(scenario))
    expect(restFrame(scenario).contacts.driven.overlap).toBeLessThan(0)
  })

  it('has the events behind it, not those to come', () => {
    const result = resultOf({ lift: 0.2, crack: 0.3, drop: 0.4, unstable: 0.45 })
    const before = frameAt({ ...run, result }, 0.15)
    expect(before).toMatchObject({ supported: true, crack: null, fallen: null, unstable: false, marked: [] })
    const after = frameAt({ ...run, result }, 0.5)
    expect(after).toMatchObject({ supported: false, crack: 'driven', unstable: true, marked: ['driven'] })
    expect(after.fallen).toBeCloseTo(0.1)
  })

  it('cracks at the contact that peaked', () => {
    const traces = tracesOf({ time: [0, 0.1, 0.2], force: [0, 40, 5], farForce: [0, 61, 5] })
    expect(frameAt({ scenario, result: resultOf({ crack: 0.1 }), traces, rows: 3 }, 0.2).crack).toBe('far')
  })

  it('shares the squeeze between pad and part as the simulated contact does', () => {
    const preset = PRESETS.find(({ id }) => id === 'teapot')!.scenario
    const { result, traces } = simulateGrip(preset, 'current-clamp')
    const frame = frameAt(
      { scenario: preset, result, traces, rows: traces.time.length },
      preset.arm.moves[0]!.start - 0.02,
    )
    const { overlap, pad, part } = frame.contacts.driven
    // At rest: force = pad stiffness × pad = part stiffness × flattening of the whole part, both sides.
    expect(pad * preset.jaws.padStiffness).toBeCloseTo(frame.force, 9)
    expect((2 * part * preset.part.stiffness) / frame.force).toBeCloseTo(1, 2)
    expect(overlap).toBeCloseTo(pad + part, 12)
  })
})
