/** Filling in finds the faults that the library finds, and tells them in the same words. */
import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import Value from 'typebox/value'
import { describe, expect, it } from 'vitest'
import { schemaFaults } from '../../sim/ask/lesson/faults.ts'
import { checkScenario, type Fault, parseScenario, SCHEMAS } from '../../sim/index.ts'
import { fill } from '../../sim/scenario/fill.ts'
import { FIRST_SCHEMAS } from '../../sim/scenario/migrate.ts'
import { soundInput } from './random.ts'
import { full, KINDS, leavesOf, type Node } from './schema-walk.ts'

const BOTH = KINDS.flatMap((kind) => [SCHEMAS[kind], FIRST_SCHEMAS[kind]])

/** Keywords that say something of a value; the others only tell about it. */
const LOOKED_AT = ['type', 'const', 'enum', 'anyOf', 'default', 'minimum', 'maximum', 'maxLength', 'maxItems', 'items']
const OBJECTS = ['properties', 'required', 'additionalProperties']
const TELLING = ['title', 'description', 'symbol', 'unit', 'shown', 'usual', 'labels']

const keysOf = (path: string) => path.split(/[.[\]]+/).filter((key) => key !== '')

const at = (value: unknown, keys: string[]) =>
  keys.reduce<unknown>((inner, key) => (inner as Node | null | undefined)?.[key], value) as Node

/** What is left out is filled in, so that nothing is ever missing. */
const isFilled = ({ default: value }: Node) => value !== undefined

const byPath = (faults: Fault[]) => faults.toSorted((a, b) => (a.path < b.path ? -1 : 1))

describe('fill', () => {
  it('knows every keyword that a scenario’s schema uses', () => {
    const walk = (node: Node) => {
      expect([...LOOKED_AT, ...OBJECTS, ...TELLING]).toEqual(expect.arrayContaining(Object.keys(node)))
      if (node.type === 'object') {
        expect(node.additionalProperties).toBe(false)
        for (const key of (node.required ?? []) as string[])
          expect((node.properties as Record<string, Node>)[key], key).toSatisfy(isFilled)
      }
      if (node.type === 'string' && !node.enum && node.const === undefined) expect(node.maxLength).toBeGreaterThan(0)
      for (const child of Object.values((node.properties ?? {}) as Record<string, Node>)) walk(child)
      for (const child of (node.anyOf ?? []) as Node[]) walk(child)
      if (node.items) walk(node.items as Node)
    }
    for (const schema of BOTH) walk(schema as unknown as Node)
  })

  it('fills in what the library would, and finds no fault where that finds none', () => {
    for (const kind of KINDS)
      fc.assert(
        fc.property(soundInput(kind), (input) => {
          const { value, faults } = fill(SCHEMAS[kind], input)
          expect(faults).toEqual([])
          expect(value).toEqual(Value.Default(SCHEMAS[kind], structuredClone(input)))
          expect(schemaFaults(SCHEMAS[kind], value)).toEqual([])
        }),
        { numRuns: 50 },
      )
  })

  it('finds what the library finds wherever a key is spoilt, and says the same of it', () => {
    const SPOILT = [null, true, 'x', '', 0, -1, 1.5, 1e300, -1e300, NaN, Infinity, [], {}, [1], { a: 1 }, undefined]
    for (const kind of KINDS) {
      const wrong: string[] = []
      for (const { path } of leavesOf(kind)) {
        if (kind !== 'screw' && !path.startsWith('actuator.')) continue // the same as of a screw
        for (const spoilt of SPOILT) {
          const input = fill(SCHEMAS[kind], full(kind)).value
          const keys = keysOf(path)
          const last = keys.pop()!
          at(input, keys)[last] = spoilt
          const { value, faults } = fill(SCHEMAS[kind], input)
          if (!isDeepStrictEqual(faults, schemaFaults(SCHEMAS[kind], value))) wrong.push(`${path} = ${spoilt}`)
        }
      }
      expect(wrong).toEqual([])
    }
  })

  it('finds several at once, keys that are missing and values of every kind among them', () => {
    for (const kind of KINDS) {
      const paths = leavesOf(kind).map(({ path }) => path)
      const spoils = fc.array(
        fc.record({ path: fc.constantFrom(...paths), up: fc.nat(2), value: fc.option(fc.jsonValue({ maxDepth: 2 })) }),
        { minLength: 1, maxLength: 6 },
      )
      fc.assert(
        fc.property(spoils, (all) => {
          const input = fill(SCHEMAS[kind], full(kind)).value
          for (const { path, up, value } of all) {
            const keys = keysOf(path)
            keys.length = Math.max(1, keys.length - up)
            const last = keys.pop()!
            const parent = at(input, keys)
            if (typeof parent !== 'object' || parent === null) continue
            if (value === null) delete parent[last]
            else parent[last] = value
          }
          const { value, faults } = fill(SCHEMAS[kind], input)
          expect(byPath(faults)).toEqual(byPath(schemaFaults(SCHEMAS[kind], value)))
        }),
        { numRuns: 300, seed: 3 },
      )
    }
  })

  it('finds a key too many, at any depth, as the library does', () => {
    for (const stray of ['stray', '__proto__', 'constructor', 'length'])
      for (const path of ['', 'servo', 'arm', 'arm.moves[0]', 'events.powerLoss', 'actuator.motor.thermal']) {
        const input = fill(SCHEMAS.screw, full('screw')).value
        Object.defineProperty(at(input, keysOf(path)), stray, { value: 1, enumerable: true })
        const { value, faults } = fill(SCHEMAS.screw, input)
        expect(faults).toEqual(schemaFaults(SCHEMAS.screw, value))
        expect(faults.map((fault) => fault.path)).toEqual([path ? `${path}.${stray}` : stray])
      }
  })

  it('gives a copy of its own', () => {
    const input = { part: { mass: 0.3 }, arm: { moves: [{ start: 0.5 }] } }
    const before = structuredClone(input)
    const value = fill(SCHEMAS.screw, input).value as typeof input
    value.part.mass = 1
    value.arm.moves[0]!.start = 1
    value.arm.moves.push({ start: 2 })
    expect(input).toEqual(before)
    const again = fill(SCHEMAS.screw, {}).value as typeof input
    again.arm.moves.push({ start: 2 })
    expect((fill(SCHEMAS.screw, {}).value as typeof input).arm.moves).toEqual([])
  })
})

/** Every look at what such an object holds is counted. */
function watched(looks: { count: number }): object {
  const look = () => {
    looks.count++
    return undefined
  }
  const keys = () => {
    looks.count++
    return []
  }
  return new Proxy({}, { get: look, has: () => look() === null, ownKeys: keys })
}

describe('what is far too much', () => {
  const faultsOf = (input: unknown) => {
    const checked = checkScenario(input)
    return checked.ok ? [] : checked.faults
  }

  it('is told by its length, and not gone through: a list of moves, a list where there is none', () => {
    const looks = { count: 0 }
    const list = Array.from({ length: 300_000 }, () => watched(looks))
    expect(faultsOf({ arm: { moves: list } })).toEqual([
      { path: 'arm.moves', given: 'a list of 300000', allowed: 'a list of at most 20 entries' },
    ])
    expect(faultsOf({ version: 1, arm: { moves: list } }).map(({ given }) => given)).toEqual(['a list of 300000'])
    for (const input of [{ name: list }, { servo: list }, { events: { release: list } }, { part: { mass: list } }])
      expect(faultsOf(input).map(({ given }) => given)).toEqual(['a list of 300000'])
    expect(looks.count).toBe(0)
  })

  it('names a few of many unknown keys and how many there are, and does not look into them', () => {
    const looks = { count: 0 }
    const stray = Object.fromEntries(Array.from({ length: 50_000 }, (_, n) => [`k${n}`, watched(looks)]))
    for (const [path, input] of [
      ['', stray],
      ['servo', { servo: stray }],
      ['arm.moves[1]', { arm: { moves: [{}, stray] } }],
      ['events.powerLoss', { version: 1, events: { powerLoss: stray } }],
    ] as const) {
      const faults = faultsOf(input)
      expect(faults).toHaveLength(21)
      expect(faults.slice(0, 20).every(({ given }) => given === 'an unknown key')).toBe(true)
      expect(faults[20]).toMatchObject({ path, given: '50000 unknown keys, of which 20 are named' })
    }
    expect(looks.count).toBe(0)
  })

  it('is refused in short words, whatever is long about it', () => {
    const long = 'x/~[]'.repeat(30_000)
    for (const text of [
      JSON.stringify({ [long]: 1 }),
      JSON.stringify({ servo: { [long]: 1 } }),
      JSON.stringify({ name: long, job: long }),
      JSON.stringify({ actuator: { kind: long } }),
      `{"stray":${'['.repeat(90_000)}${']'.repeat(90_000)}}`,
      `{"notes":${'['.repeat(90_000)}${']'.repeat(90_000)}}`,
      `{"part":{"mass":${'{"a":'.repeat(30_000)}1${'}'.repeat(30_000)}}}`,
    ]) {
      const checked = parseScenario(text)
      const faults = checked.ok ? [] : checked.faults
      expect(faults).toHaveLength(1)
      expect(faults[0]!.path.length + faults[0]!.given.length).toBeLessThan(200)
    }
  })

  it('has room for a scenario with notes of full length, every character escaped', () => {
    const notes = '\u0001'.repeat(20_000)
    const checked = checkScenario({ notes, name: '\u0001'.repeat(200), arm: { moves: Array(20).fill({}) } })
    expect(checked.ok && parseScenario(JSON.stringify(checked.scenario, null, 2)).ok).toBe(true)
  })
})
