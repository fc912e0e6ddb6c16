import { describe, expect, it } from 'vitest'
import { editScenario, SCENARIO_SCHEMA, SCHEMAS } from '../../sim/index.ts'
import { make } from './make.ts'
import { full, isChoice, isQuantity, KINDS, leavesOf, objectsOf, quantitiesOf } from './schema-walk.ts'

const WITHOUT_DEFAULT = [
  'part.markForce',
  'part.yieldForce',
  'part.crackForce',
  'drive.busPower',
  'part.gyration',
  'jaws.padRadius',
  'actuator.transmission.coulombBack',
  'actuator.transmission.viscousBack',
  'arm.lift',
  'strategies.sensedForce.derivativeFilter',
  'run.step',
  'run.cycle',
]

describe.each(KINDS)('schema of a %s axis', (kind) => {
  /** What the kinds have in common is tried on one of them. */
  const own = ({ path }: { path: string }) => kind === 'screw' || path.startsWith('actuator.')

  it('says for every key what it is, its unit, its range and what it does', () => {
    const leaves = leavesOf(kind)
    expect(leaves.length).toBeGreaterThan(90)
    for (const { path, schema } of leaves) {
      if (path === 'format' || path === 'version') continue
      expect(schema.title, path).toMatch(/\S/)
      if (isQuantity(schema)) {
        expect(typeof schema.unit, path).toBe('string')
        expect(typeof schema.symbol, path).toBe('string')
        expect(schema.description, path).toMatch(/^[A-Z].{8,}\.$/)
        expect(Number.isFinite(schema.minimum) && Number.isFinite(schema.maximum), path).toBe(true)
        expect(schema.minimum, path).toBeLessThan(schema.maximum)
        if (schema.shown !== undefined) expect(schema.shown, path).not.toBe(schema.unit)
      }
      if (isChoice(schema)) {
        expect(schema.description, path).toMatch(/^[A-Z].{8,}\.$/)
        expect(new Set(schema.enum).size, path).toBe(schema.enum.length)
        expect(new Set(schema.labels).size, path).toBe(schema.enum.length)
      }
    }
  })

  it('gives every key a default inside its range, save those that mean "none" or "chosen by the bench"', () => {
    for (const { path, schema } of leavesOf(kind)) {
      if (WITHOUT_DEFAULT.includes(path)) {
        expect(schema.default, path).toBeUndefined()
        continue
      }
      expect(schema.default, path).toBeDefined()
      if (isQuantity(schema)) {
        expect(schema.default, path).toBeGreaterThanOrEqual(schema.minimum)
        expect(schema.default, path).toBeLessThanOrEqual(schema.maximum)
      }
      if (isChoice(schema)) expect(schema.enum, path).toContain(schema.default)
    }
  })

  it('fills in the defaults of every key, also in a move and a power loss', () => {
    const scenario = make(full(kind))
    for (const { path, schema, nullable } of leavesOf(kind)) {
      const at = path.split(/[.[\]]+/).reduce((value: unknown, key) => (value as never)?.[key], scenario)
      if (nullable) expect(at, path).toBeNull()
      else expect(at, path).toBe(schema.default)
    }
  })

  it('is closed: every object refuses a key that it does not know, and lists those it does', () => {
    for (const { path, keys } of objectsOf(kind)) {
      const stray = path ? `${path}.stray` : 'stray'
      const checked = editScenario(make(full(kind)), [{ path: stray, value: 1 }])
      const faults = checked.ok ? [] : checked.faults
      expect(faults).toEqual([{ path: stray, given: 'an unknown key', allowed: `one of ${keys.join(', ')}` }])
    }
  })

  it('takes every quantity at both ends of its range and refuses it beyond, naming range and unit', () => {
    for (const { path, schema, nullable } of quantitiesOf(kind).filter(own)) {
      const { minimum, maximum, unit } = schema
      const faultsAt = (value: unknown) => {
        const checked = editScenario(make(full(kind)), [{ path, value }])
        return checked.ok ? [] : checked.faults.filter((fault) => fault.path === path && / from /.test(fault.allowed))
      }
      for (const value of [minimum, maximum]) expect(faultsAt(value), `${path} = ${value}`).toEqual([])
      const span = maximum - minimum
      const kindOf = schema.type === 'integer' ? 'a whole number' : 'a number'
      const allowed = `${nullable ? 'null or ' : ''}${kindOf} from ${minimum} to ${maximum}${unit ? ` ${unit}` : ''}`
      for (const value of [minimum - 1e-3 * span, maximum + 1e-3 * span, 1e308, Infinity, -Infinity, Number.NaN])
        expect(faultsAt(value)).toEqual([{ path, given: String(value), allowed }])
    }
  })

  it('refuses a wrong type at every key, with what was given', () => {
    for (const { path, schema, nullable } of leavesOf(kind).filter(own)) {
      if (path === 'actuator.kind') continue // decides the schema; see validate.test.ts
      const wrong: [unknown, string][] = [
        [[1, 2], 'a list of 2'],
        [{ a: 1 }, '{"a":1}'],
      ]
      if (schema.type !== 'boolean') wrong.push([true, 'true'])
      if (schema.type !== 'string' || isChoice(schema)) wrong.push(['ten', '"ten"'])
      if (!nullable) wrong.push([null, 'null'])
      for (const [value, given] of wrong) {
        const checked = editScenario(make(full(kind)), [{ path, value }])
        const faults = checked.ok ? [] : checked.faults
        expect(faults, `${path} = ${given}`).toContainEqual(expect.objectContaining({ path, given }))
        expect(faults.find((fault) => fault.path === path)?.allowed, path).toMatch(/^(?!an object)\S/)
      }
    }
  })
})

describe('SCENARIO_SCHEMA', () => {
  it('holds the three kinds and is otherwise the schema of each', () => {
    const { actuator, ...rest } = SCENARIO_SCHEMA.properties
    expect(actuator.anyOf.map((option) => option.properties.kind.const)).toEqual(KINDS)
    for (const kind of KINDS) {
      const { actuator: own, ...same } = SCHEMAS[kind].properties
      expect(same).toEqual(rest)
      expect(actuator.anyOf).toContainEqual(own)
    }
  })
})
