import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Checked,
  checkScenario,
  type Fault,
  faultLine,
  LONGEST_FILE,
  parseScenario,
  show,
} from '../../sim/index.ts'
import { make } from './make.ts'
import { soundInput } from './random.ts'
import { full, KINDS, leavesOf, objectsOf, quantitiesOf } from './schema-walk.ts'

const faultsOf = (checked: Checked): Fault[] => (checked.ok ? [] : checked.faults)
const pathsOf = (checked: Checked) => faultsOf(checked).map((fault) => fault.path)
/** A value at a dotted path, wrapped in the objects on its way. */
const nest = (path: string, value: unknown) =>
  path.split('.').reduceRight<unknown>((inner, key) => ({ [key]: inner }), value)

describe('checkScenario', () => {
  it('takes the empty object, and what it gave out before', () => {
    const scenario = make({})
    expect(make(scenario)).toEqual(scenario)
    expect(scenario.actuator.kind).toBe('screw')
  })

  it('leaves its input untouched', () => {
    const input = Object.freeze({ servo: Object.freeze({ kp: 5 }), arm: Object.freeze({ moves: Object.freeze([]) }) })
    expect(make(input).servo.kp).toBe(5)
    expect(input).toEqual({ servo: { kp: 5 }, arm: { moves: [] } })
  })

  it.each([null, undefined, 3, 'text', true, [], [{}]])('refuses %j, which is no object', (input) => {
    expect(faultsOf(checkScenario(input))).toEqual([
      { path: '', given: show(input), allowed: 'an object with "format": "jawbench-scenario"' },
    ])
  })

  it.each(['lever', '__proto__', 'constructor', 'toString', '', 3, null, ['screw']])(
    'refuses the actuator kind %j and lists the known ones',
    (kind) => {
      expect(faultsOf(checkScenario({ actuator: { kind } }))).toEqual([
        { path: 'actuator.kind', given: show(kind), allowed: '"screw", "rack", "direct"' },
      ])
    },
  )

  it('holds a kind to its own keys: a screw has no force constant, a direct drive no lead', () => {
    expect(pathsOf(checkScenario({ actuator: { motor: { forceConstant: 12 } } }))).toEqual([
      'actuator.motor.forceConstant',
    ])
    expect(pathsOf(checkScenario({ actuator: { kind: 'direct', transmission: { lead: 0.005 } } }))).toEqual([
      'actuator.transmission.lead',
    ])
  })

  it('refuses another format, of whatever version', () => {
    expect(faultsOf(checkScenario({ format: 'other', version: 3 }))).toEqual([
      { path: 'format', given: '"other"', allowed: '"jawbench-scenario"' },
    ])
  })

  it('tells every fault at once: each quantity of the format out of range', () => {
    for (const kind of KINDS) {
      const input = full(kind)
      const expected = quantitiesOf(kind).map(({ path }) => path)
      for (const path of expected) put(input, path, -1e9)
      expect(expected.length).toBeGreaterThan(90)
      expect(pathsOf(checkScenario(input)).sort()).toEqual(expected.sort())
    }
  })

  it('names unknown keys wherever they stand', () => {
    const checked = checkScenario({
      colour: 1,
      jaws: { friction: { rolling: 1 } },
      actuator: { motor: { thermal: { fan: true } } },
      sensors: { gauge: { colour: 0 } },
      arm: { moves: [{}, { speed: 1 }, { axis: 'up', angle: 2 }] },
      events: { powerLoss: { cause: 'storm' } },
    })
    expect(pathsOf(checked).sort()).toEqual([
      'actuator.motor.thermal.fan',
      'arm.moves[1].speed',
      'arm.moves[2].angle',
      'colour',
      'events.powerLoss.cause',
      'jaws.friction.rolling',
      'sensors.gauge.colour',
    ])
    for (const { given, allowed } of faultsOf(checked)) {
      expect(given).toBe('an unknown key')
      expect(allowed).toMatch(/^one of \w+(, \w+)+$/)
    }
  })

  it('names unknown keys with slashes, tildes and numbers in them', () => {
    expect(pathsOf(checkScenario({ 'a/b~c~1': 1, servo: { '0': 2 } })).sort()).toEqual(['a/b~c~1', 'servo[0]'])
  })

  it('refuses __proto__ and constructor as keys, and pollutes no prototype', () => {
    const text =
      '{"__proto__":{"polluted":1},"servo":{"__proto__":{"kp":1}},"constructor":{"prototype":{"polluted":1}}}'
    expect(pathsOf(parseScenario(text)).sort()).toEqual(['__proto__', 'constructor', 'servo.__proto__'])
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false)
    expect(({} as { polluted?: number }).polluted).toBeUndefined()
  })

  it.each([
    [Number.NaN, 'NaN'],
    [Infinity, 'Infinity'],
    [-Infinity, '-Infinity'],
    [1e308, '1e+308'],
  ])('refuses %d in a number, a text and a list', (value, given) => {
    for (const path of ['part.mass', 'run.seed', 'run.step', 'name', 'arm.moves', 'arm.lift', 'part.exponent'])
      expect(faultsOf(checkScenario(nest(path, value)))).toEqual([
        { path, given, allowed: expect.stringMatching(/\S/) },
      ])
  })

  it('refuses what the issue names: negative mass, zero inductance', () => {
    expect(faultsOf(checkScenario({ part: { mass: -0.2 }, actuator: { motor: { inductance: 0 } } }))).toEqual(
      [
        { path: 'actuator.motor.inductance', given: '0', allowed: '1e-7 to 10 H' },
        { path: 'part.mass', given: '-0.2', allowed: '0.00001 to 200 kg' },
      ].map((fault) => ({ ...fault, allowed: `a number from ${fault.allowed}` })),
    )
  })

  it('refuses a seed that is no whole number, a text and a list that are too long', () => {
    expect(faultsOf(checkScenario({ run: { seed: 1.5 } }))[0]?.allowed).toBe('a whole number from 0 to 4294967295')
    const long = faultsOf(checkScenario({ name: 'x'.repeat(201), arm: { moves: Array(21).fill({}) } }))
    expect(long.map(({ path, allowed }) => [path, allowed])).toEqual([
      ['name', 'a text of at most 200 characters'],
      ['arm.moves', 'a list of at most 20 entries'],
    ])
    expect(long[0]!.given.length).toBeLessThanOrEqual(60)
  })

  it('takes what the schema allows, or blames keys that are there', () => {
    for (const kind of KINDS) {
      const known = new Set([...leavesOf(kind), ...objectsOf(kind)].map(({ path }) => path))
      fc.assert(
        fc.property(soundInput(kind), (input) => {
          for (const { path, given, allowed } of faultsOf(checkScenario(input))) {
            expect(known).toContain(path.replace(/\[\d\]/, '[0]'))
            expect(given).toMatch(/\S/)
            expect(allowed).toMatch(/\S/)
          }
        }),
        { numRuns: 100 },
      )
    }
  })

  it('blames exactly the keys that were spoilt', () => {
    const names = quantitiesOf('screw').map(({ path }) => path)
    const spoilt = fc.constantFrom<unknown>('text', -1e9, 1e300, true, Number.NaN, Infinity, [], {})
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...names), spoilt, { maxKeys: 8, noNullPrototype: true }), (bad) => {
        const input = full('screw')
        for (const [path, value] of Object.entries(bad)) put(input, path, value)
        expect(pathsOf(checkScenario(input)).sort()).toEqual(Object.keys(bad).sort())
      }),
    )
  })

  it('survives any JSON value at any key', () => {
    const keys = ['actuator', 'jaws', 'part', 'arm', 'events', 'run', 'name', 'format', 'strategies', '__proto__', 'x']
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...keys), fc.jsonValue({ maxDepth: 4 })), (input) => {
        const faults = faultsOf(checkScenario(JSON.parse(JSON.stringify(input))))
        for (const fault of faults) expect(faultLine(fault)).toMatch(/^.+: given .+, allowed .+$/s)
      }),
      { numRuns: 300 },
    )
  })
})

describe('parseScenario', () => {
  it('reads back what it was written from', () => {
    for (const kind of KINDS)
      fc.assert(
        fc.property(soundInput(kind, false), (input) => {
          const checked = checkScenario(input)
          if (checked.ok) expect(parseScenario(JSON.stringify(checked.scenario))).toEqual(checked)
          else expect(parseScenario(JSON.stringify(input))).toEqual(checked)
        }),
        { numRuns: 50 },
      )
    const scenario = make({ part: { crackForce: 12.5 }, arm: { moves: [{ axis: 'up' }] } })
    expect(parseScenario(JSON.stringify(scenario))).toEqual({ ok: true, scenario })
  })

  it('refuses a file cut off anywhere', () => {
    const text = JSON.stringify(make({}))
    for (let end = 0; end < text.length; end += 37) {
      const [fault, ...more] = faultsOf(parseScenario(text.slice(0, end)))
      expect(more).toEqual([])
      expect(fault).toEqual({
        path: '',
        given: expect.stringMatching(/^no JSON \(.+\)$/),
        allowed: 'a JSON object; JSON knows no NaN, Infinity or comments',
      })
    }
  })

  it('refuses NaN, Infinity and comments, which are no JSON, and a number that overflows', () => {
    for (const text of ['{"part":{"mass":NaN}}', '{"part":{"mass":Infinity}}', '{} // note'])
      expect(faultsOf(parseScenario(text))[0]?.given).toMatch(/^no JSON/)
    expect(faultsOf(parseScenario('{"part":{"mass":1e999}}'))).toEqual([
      { path: 'part.mass', given: 'Infinity', allowed: 'a number from 0.00001 to 200 kg' },
    ])
  })

  it('refuses a text that is too long before reading it', () => {
    expect(faultsOf(parseScenario(' '.repeat(50_000_000)))).toEqual([
      { path: '', given: 'a text of 50000000 characters', allowed: `at most ${LONGEST_FILE} characters` },
    ])
    expect(parseScenario('{}'.padEnd(LONGEST_FILE)).ok).toBe(true)
    expect(parseScenario('{}'.padEnd(LONGEST_FILE + 1)).ok).toBe(false)
  })

  it('refuses what is nested too deeply to be read', () => {
    const deep = `{"notes":${'{"a":'.repeat(30_000)}1${'}'.repeat(30_000)}}`
    expect(faultsOf(parseScenario(deep))).toEqual([
      { path: '', given: 'a text nested too deeply to be read', allowed: 'a JSON object as the format describes it' },
    ])
  })
})

describe('faultLine', () => {
  it('puts path, given and allowed in one line', () => {
    expect(faultLine({ path: 'a.b', given: '1', allowed: '2' })).toBe('a.b: given 1, allowed 2')
    expect(faultLine({ path: '', given: '1', allowed: '2' })).toBe('the file: given 1, allowed 2')
  })
})

/** Puts a value at a path; objects and lists on the way are made. */
function put(target: object, path: string, value: unknown): void {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== '')
  const last = keys.pop()!
  let inner = target as Record<string, unknown>
  for (const key of keys) {
    inner[key] ??= {}
    inner = inner[key] as Record<string, unknown>
  }
  inner[last] = value
}
