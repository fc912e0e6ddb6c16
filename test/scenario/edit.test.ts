import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Edit, editScenario, readPath, type Scenario } from '../../sim/index.ts'
import { make } from './make.ts'
import { full, KINDS, leavesOf } from './schema-walk.ts'

const edit = (input: object, ...edits: Edit[]): Scenario => {
  const checked = editScenario(input, edits)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}
const faults = (input: object, ...edits: Edit[]) => {
  const checked = editScenario(input, edits)
  return checked.ok ? [] : checked.faults
}

describe('readPath', () => {
  it('reads every key of a scenario', () => {
    for (const kind of KINDS) {
      const scenario = make(full(kind))
      for (const { path, schema, nullable } of leavesOf(kind))
        expect(readPath(scenario, path), path).toBe(nullable ? null : schema.default)
    }
  })

  it('gives undefined where nothing is', () => {
    const scenario = make({})
    for (const path of ['arm.moves[0].start', 'servo.kpp', 'events.powerLoss.time', 'name.length.x'])
      expect(readPath(scenario, path)).toBeUndefined()
  })
})

describe('editScenario', () => {
  it('changes keys in a copy and leaves the rest', () => {
    const before = make({})
    const after = edit(before, { path: 'servo.kp', value: 3200 }, { path: 'part.exponent', value: 1.5 })
    expect(after).toEqual({ ...before, servo: { ...before.servo, kp: 3200 }, part: { ...before.part, exponent: 1.5 } })
    expect(before).toEqual(make({}))
  })

  it('works on an input that leaves keys out, and makes objects and lists on the way', () => {
    expect(edit({}, { path: 'servo.kp', value: 7 }).servo.kp).toBe(7)
    expect(edit({}, { path: 'events.powerLoss.time', value: 0.5 }).events.powerLoss).toEqual({
      time: 0.5,
      windings: 'open',
    })
    expect(edit({}, { path: 'arm.moves[0].acceleration', value: 9 }).arm.moves.map((m) => m.acceleration)).toEqual([9])
  })

  it('takes an optional key or an entry of a list away', () => {
    const scenario = make({ part: { crackForce: 30 }, arm: { moves: [{ start: 0.1 }, { start: 0.2 }] } })
    expect(edit(scenario, { path: 'part.crackForce', value: undefined }).part).not.toHaveProperty('crackForce')
    expect(edit(scenario, { path: 'arm.moves[0]', value: undefined }).arm.moves.map((m) => m.start)).toEqual([0.2])
    expect(edit(make({ servo: { kp: 5 } }), { path: 'servo.kp', value: undefined }).servo.kp).toBe(8000)
  })

  it('checks the outcome, not each edit: two keys may move together', () => {
    expect(faults(make({}), { path: 'part.width', value: 0.1 }).map((fault) => fault.path)).toEqual(['jaws.opening'])
    expect(edit(make({}), { path: 'part.width', value: 0.1 }, { path: 'jaws.opening', value: 0.12 }).part.width).toBe(
      0.1,
    )
  })

  it('refuses an unknown key, an entry past the end of a list, an empty path', () => {
    expect(faults({}, { path: 'servo.kpp', value: 1 })[0]).toMatchObject({
      path: 'servo.kpp',
      given: 'an unknown key',
    })
    expect(faults(make({}), { path: 'arm.moves[3].start', value: 1 })).toEqual([
      { path: 'arm.moves[3].start', given: 'the index 3', allowed: 'an index from 0 to 0' },
    ])
    expect(faults({}, { path: '', value: 1 })).toEqual([
      { path: '', given: 'an empty path', allowed: 'a path such as servo.kp or arm.moves[0].start' },
    ])
  })

  it('refuses paths through __proto__ and does not reach any prototype', () => {
    for (const path of ['__proto__.polluted', 'servo.__proto__.polluted', '__proto__'])
      expect(faults({}, { path, value: 1 })).toEqual([
        { path, given: 'a path through __proto__', allowed: 'a path such as servo.kp or arm.moves[0].start' },
      ])
    expect(faults({}, { path: 'constructor.prototype.polluted', value: 1 }).map((fault) => fault.path)).toEqual([
      'constructor',
    ])
    expect(({} as { polluted?: number }).polluted).toBeUndefined()
  })

  it.each([
    ['arm.moves[-1]', 'no path'],
    ['arm.moves[1.5]', 'no path'],
    ['arm.moves[1e3]', 'no path'],
    ['arm.moves[]', 'no path'],
    ['arm.moves[0', 'no path'],
    ['arm.moves 0', 'no path'],
    ['arm.moves.0.start', 'no path'],
    ['arm.moves[9999999999]', 'no path'],
    ['arm.moves[999999999]', 'the index 999999999'],
    ['arm.moves[2].start', 'the index 2'],
    ['arm.moves.length', 'the key length of a list'],
    ['arm.moves.push', 'the key push of a list'],
    ['arm.moves.constructor.x', 'the key constructor of a list'],
    ['servo[0]', 'the index 0'],
    ['servo.', 'no path'],
    ['.servo', 'no path'],
    ['servo..kp', 'no path'],
    [' servo.kp', 'no path'],
    ['servo.push', 'an unknown key'],
    ['constructor', 'an unknown key'],
    ['toString.call', 'an unknown key'],
  ])('refuses %s by name', (path, given) => {
    const scenario = make({ arm: { moves: [{}] } })
    const [fault, ...more] = faults(scenario, { path, value: 1 })
    expect(fault?.given).toBe(given)
    expect(path.startsWith(fault!.path)).toBe(true)
    expect(more).toEqual([])
  })

  it('takes the spread of a quantity along with it, and leaves what never was to be refused', () => {
    const varied = (path: string) => ({ path, law: 'uniform', half: 0.1, share: true })
    const scenario = make({
      part: { crackForce: 60 },
      spread: {
        varies: ['part.mass', 'part.crackForce', 'actuator.transmission.threadFriction'].map(varied),
        together: [{ paths: ['part.mass', 'part.crackForce'], correlation: 0.5 }],
      },
    })
    const paths = (after: Scenario) => after.spread.varies.map(({ path }) => path)
    const whole = edit(scenario, { path: 'part.crackForce', value: undefined })
    expect(paths(whole)).toEqual(['part.mass', 'actuator.transmission.threadFriction'])
    expect(whole.spread.together).toEqual([])
    const rack = edit(scenario, { path: 'actuator', value: { kind: 'rack' } })
    expect(paths(rack)).toEqual(['part.mass', 'part.crackForce'])
    expect(rack.spread.together).toEqual(scenario.spread.together)
    expect(paths(edit(scenario, { path: 'part.mass', value: undefined })), 'a default comes back').toHaveLength(3)
    expect(paths(edit(scenario, { path: 'actuator.transmission.threadFriction', value: 0 }))).toHaveLength(3)
    const refused = editScenario(scenario, [{ path: 'spread.varies[2].path', value: 'part.colour' }])
    expect(refused).toMatchObject({ ok: false, faults: [{ path: 'spread.varies[2].path', given: 'part.colour' }] })
    expect(scenario.spread.varies).toHaveLength(3)
  })

  it('takes no entry away that is not there, and makes nothing in order to take something away', () => {
    const scenario = make({ arm: { moves: [{}] } })
    for (const path of ['arm.moves[1]', 'arm.moves[1].start'])
      expect(faults(scenario, { path, value: undefined })[0]).toMatchObject({ path, given: 'the index 1' })
    expect(edit(scenario, { path: 'events.powerLoss.time', value: undefined })).toEqual(scenario)
  })

  it('answers to any path and value with a scenario or with faults, and leaves its input alone', () => {
    const scenario = make({ arm: { moves: [{}] } })
    const before = structuredClone(scenario)
    const piece = fc.constantFrom('arm', 'moves', 'servo', 'kp', 'length', '__proto__', 'constructor', 'sensors', 'job')
    const index = fc.integer({ min: -2, max: 5 }).map((n) => `[${n}]`)
    const path = fc.oneof(
      fc.string(),
      fc
        .array(fc.oneof(piece, index, fc.constant('.')), { maxLength: 5 })
        .map((parts) => parts.join('.').replaceAll('.[', '[')),
    )
    fc.assert(
      fc.property(path, fc.oneof(fc.jsonValue(), fc.constant(undefined)), (path, value) => {
        const checked = editScenario(scenario, [{ path, value: value as unknown }])
        if (checked.ok) expect(make(checked.scenario)).toEqual(checked.scenario)
        else expect(checked.faults.length).toBeGreaterThan(0)
        expect(() => readPath(scenario, path)).not.toThrow()
      }),
      { numRuns: 500 },
    )
    expect(scenario).toEqual(before)
  })

  it('replaces a text in its way, and then says what is wrong with that', () => {
    expect(faults({ name: 'x' }, { path: 'name.first', value: 1 })).toEqual([
      { path: 'name', given: '{"first":1}', allowed: 'a text of at most 200 characters' },
    ])
  })
})
