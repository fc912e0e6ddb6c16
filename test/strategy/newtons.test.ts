import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editScenario, readPath, type Scenario, STRATEGIES, strategyOf } from '../../sim/index.ts'
import { make } from '../scenario/make.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Axes of each kind with friction, mirrored or against an anvil, cold or warm, their current read wrongly. */
const axes: fc.Arbitrary<Scenario> = fc
  .record({
    kind: fc.constantFrom('screw', 'rack', 'direct'),
    layout: fc.constantFrom('mirrored', 'anvil'),
    coulomb: within(0, 20),
    stick: within(0, 10),
    threadFriction: within(0, 0.25),
    lead: within(0.001, 0.02),
    efficiency: within(0.4, 1),
    gainError: within(-0.1, 0.1),
    offset: within(-2, 2),
    ambient: within(-40, 120),
    magnetCoefficient: within(-0.01, 0),
    currentOffset: within(-0.01, 0.5), // below, 5 N would ask for less current than a setting may have
  })
  .map(({ kind, layout, coulomb, stick, threadFriction, lead, efficiency, gainError, offset, ...rest }) =>
    make({
      actuator: {
        kind,
        motor: {
          peakCurrent: 5000,
          thermal: { ambient: rest.ambient, magnetCoefficient: rest.magnetCoefficient },
        },
        transmission: {
          coulomb,
          breakaway: coulomb + stick,
          ...(kind === 'screw' ? { threadFriction, lead } : {}),
          ...(kind === 'rack' ? { efficiency } : {}),
        },
      },
      jaws: { layout },
      servo: { currentLimit: 5000 },
      drive: { currentOffset: rest.currentOffset },
      sensors: { gauge: { gainError, offset } },
    }),
  )

const withSetting = (scenario: Scenario, path: string, value: number): Scenario => {
  const checked = editScenario(scenario, [{ path, value }])
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

describe.each(STRATEGIES)('$label in newtons', (kind) => {
  it('has a setting that the format knows', () => {
    expect(readPath(make(), kind.setting.path)).toBeTypeOf('number')
    expect(kind.setting.label).toMatch(/\S/)
    expect(kind.summary).toMatch(/\.$/)
    expect(strategyOf(kind.id)).toBe(kind)
  })

  it('expects the wanted force from the setting made for it', () => {
    fc.assert(
      fc.property(axes, within(5, 200), (scenario, force) => {
        const set = withSetting(scenario, kind.setting.path, kind.settingFor(scenario, force))
        expect(kind.forceOf(set).expected / force).toBeCloseTo(1, 9)
      }),
    )
  })

  it('has its expected force between the least and the most', () => {
    fc.assert(
      fc.property(axes, within(0.01, 100), (scenario, setting) => {
        const { expected, least, most } = kind.forceOf(withSetting(scenario, kind.setting.path, setting))
        expect(least).toBeGreaterThanOrEqual(0)
        expect(expected).toBeGreaterThanOrEqual(least)
        if (most !== null) expect(most).toBeGreaterThanOrEqual(expected * (1 - 1e-12))
      }),
    )
  })

  it('asks for more, the more force is wanted', () => {
    fc.assert(
      fc.property(axes, within(1, 100), within(1.001, 2), (scenario, force, more) => {
        expect(kind.settingFor(scenario, force * more)).toBeGreaterThan(kind.settingFor(scenario, force))
      }),
    )
  })
})

describe('friction band of a current', () => {
  const clamp = strategyOf('current-clamp')
  const direct = (edits: Record<string, unknown> = {}) =>
    make(
      { actuator: { kind: 'direct', transmission: { coulomb: 2, breakaway: 3 } } },
      { 'strategies.currentClamp.limit': 2, ...edits },
    )

  it('is push against friction and push with it, shared by the contacts', () => {
    expect(clamp.forceOf(direct())).toEqual({ expected: (24 - 2) / 2, least: (24 - 3) / 2, most: (24 + 3) / 2 })
    expect(clamp.forceOf(direct({ 'jaws.layout': 'anvil' }))).toEqual({ expected: 22, least: 21, most: 27 })
  })

  it('is that of the current in the winding: what is set less what the measurement adds', () => {
    const off = (offset: number) => clamp.forceOf(direct({ 'drive.currentOffset': offset }))
    expect(off(0.5)).toEqual(clamp.forceOf(direct({ 'strategies.currentClamp.limit': 1.5 })))
    expect(off(-0.5)).toEqual(clamp.forceOf(direct({ 'strategies.currentClamp.limit': 2.5 })))
    expect(off(4)).toEqual({ expected: 0, least: 0, most: 0 })
  })

  it('shrinks with magnets that a hot place weakens', () => {
    const thermal = 'actuator.motor.thermal'
    const hot = direct({ [`${thermal}.ambient`]: 75, [`${thermal}.magnetCoefficient`]: -0.002 })
    const { expected, least, most } = clamp.forceOf(hot)
    expect(expected).toBeCloseTo((24 * 0.9 - 2) / 2, 9)
    expect(least).toBeCloseTo((24 * 0.9 - 3) / 2, 9)
    expect(most).toBeCloseTo((24 * 0.9 + 3) / 2, 9)
  })

  it('reaches down, in a duty, to what its warm magnets still press', () => {
    const single = clamp.forceOf(direct())
    const duty = clamp.forceOf(direct({ 'run.cycle': 4 }))
    expect(duty.expected).toBe(single.expected)
    expect(duty.most).toBe(single.most)
    expect(duty.least).toBeLessThan(single.least)
    expect(clamp.forceOf(direct({ 'run.cycle': 8 })).least).toBeGreaterThan(duty.least)
  })

  it('starts at zero: a current below friction presses nothing', () => {
    const { expected, least } = clamp.forceOf(direct({ 'strategies.currentClamp.limit': 0.1 }))
    expect([expected, least]).toEqual([0, 0])
  })

  it('has no upper end on an axis that locks itself', () => {
    const screw = (threadFriction: number) => make({ actuator: { transmission: { threadFriction } } })
    expect(clamp.forceOf(screw(0.2)).most).toBeNull()
    expect(clamp.forceOf(screw(0.1)).most).toBeGreaterThan(0)
  })

  it('never promises more than the servo lets through', () => {
    const limited = direct({ 'servo.currentLimit': 1, 'strategies.currentClamp.limit': 3 })
    expect(clamp.forceOf(limited)).toEqual(clamp.forceOf(direct({ 'strategies.currentClamp.limit': 1 })))
  })

  it('of a threshold stop that presses on is that of the clamp', () => {
    const pressing = direct({ 'strategies.thresholdStop.afterwards': 'press' })
    expect(strategyOf('threshold-stop').forceOf(pressing)).toEqual(clamp.forceOf(direct()))
  })
})

describe('strategyOf', () => {
  it('refuses an unknown id and lists the known ones, each once', () => {
    expect(() => strategyOf('squeeze' as never)).toThrow(
      new RangeError('unknown strategy "squeeze", known are threshold-stop, current-clamp, sensed-force'),
    )
    expect(new Set(STRATEGIES.map(({ id }) => id)).size).toBe(STRATEGIES.length)
  })
})
