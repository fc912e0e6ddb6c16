import { describe, expect, it } from 'vitest'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { core, run } from '../../sim/cli/core.ts'
import { NoFit } from '../../sim/log/facts.ts'
import { identify } from '../../sim/log/identify.ts'
import type { Measured } from '../../sim/log/measured.ts'
import { readPath } from '../../sim/scenario/index.ts'
import { FREE, logOf, scenario } from './case.ts'

const PATHS = Object.keys(FREE)
const crew = crewHere(run, core)
const log = logOf(1)
const faultOf = (asked: Promise<unknown>) =>
  asked.then(
    () => null,
    (error) => (error instanceof NoFit ? error.fault.kind : String(error)),
  )

describe('a fit', () => {
  it('takes a key that is named twice once', async () => {
    const { values } = await identify(scenario, [log], { free: [PATHS[0]!, PATHS[0]!] }, crew)
    expect(values.map(({ path }) => path)).toEqual([PATHS[0]])
  })

  it('knows forces as a ratio to the force constant, also beside a gauge that nothing touches', async () => {
    const force = log.time.map((_, k) => 0.01 * Math.sin(k * 12.9898))
    const { untold } = await identify(
      scenario,
      [{ ...log, channels: { ...log.channels, force } }],
      { free: PATHS },
      crew,
    )
    expect(untold.map(({ kind }) => kind)).toContain('ratio')
  })

  it('gives each value as it stands in the scenario that it hands out, be it from an earlier stage', async () => {
    const { values, scenario: found } = await identify(scenario, [log], { free: null }, crew)
    expect(values.length).toBeGreaterThan(4)
    for (const { path, value } of values) if (path !== 'log.delay') expect(readPath(found, path), path).toBe(value)
  })

  it('says when things begin, and how late they are shown', async () => {
    const { alignment } = await identify(scenario, [log], { free: PATHS.slice(0, 4) }, crew)
    const [{ motion, touch, late }] = alignment as [(typeof alignment)[0]]
    // The way sets out at 10 ms, with least jerk.
    expect(motion).toBeGreaterThan(0.01)
    expect(motion).toBeLessThan(0.05)
    expect(touch).toBeNull()
    expect(late.find(({ channel }) => channel === 'motorTravel')!.delay).toBeCloseTo(0.0007, 3)
  })

  it('is refused where what it is held against is another axis, whatever drives the model', async () => {
    const other: Measured = { ...log, channels: { ...log.channels, current: log.time.map((t) => Math.cos(300 * t)) } }
    expect(await faultOf(identify(scenario, [other], { free: PATHS }, crew))).toBe('another-axis')
    expect(await faultOf(identify(scenario, [other], { free: PATHS, drivenBy: 'current' }, crew))).toBe('another-axis')
  })

  it('is refused where nothing moves, nothing drives and nothing is held against', async () => {
    const { time, channels } = log
    const still = time.map(() => 0.01)
    const none = (without: Measured['channels']) =>
      faultOf(identify(scenario, [{ time, channels: without }], { free: PATHS }, crew))
    expect(await none({ target: still, motorTravel: still, current: channels.current })).toBe('still')
    expect(await none({ motorTravel: channels.motorTravel })).toBe('nothing-drives')
    expect(await none({ target: channels.target, motorTravel: channels.motorTravel })).toBe('nothing-compares')
    expect(await faultOf(identify(scenario, [log], { free: ['part.colour'] }, crew))).toBe('no-quantity')
  })
})
