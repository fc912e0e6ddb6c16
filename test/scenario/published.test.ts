/** The published JSON Schema in the eyes of another validator than the one that checks scenarios. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { SCENARIO_SCHEMA } from '../../sim/index.ts'
import { make } from './make.ts'
import { soundInput } from './random.ts'
import { full, KINDS, leavesOf, type Node, objectsOf, quantitiesOf } from './schema-walk.ts'

const text = JSON.stringify(SCENARIO_SCHEMA)
const published = z.fromJSONSchema(JSON.parse(text))
const accepts = (value: unknown) => published.safeParse(value).success

describe('published JSON Schema', () => {
  it('is plain JSON', () => {
    expect(structuredClone(SCENARIO_SCHEMA)).toEqual(JSON.parse(text))
  })

  it('takes the defaults of every kind, and any scenario drawn from its ranges', () => {
    for (const kind of KINDS) {
      const scenario = make(full(kind))
      expect(accepts(scenario)).toBe(true)
      fc.assert(
        fc.property(soundInput(kind, false), (input) => {
          expect(accepts(input)).toBe(true)
        }),
        { numRuns: 30 },
      )
    }
  })

  it('refuses every quantity out of its range, every key of a wrong type and every unknown key', () => {
    for (const kind of KINDS) {
      const spoil = (path: string, value: unknown) => {
        const scenario = make(full(kind))
        const keys = path.split(/[.[\]]+/).filter((key) => key !== '')
        const last = keys.pop()!
        const parent = keys.reduce<unknown>((inner, key) => (inner as Node)[key], scenario) as Node
        parent[last] = value
        return scenario
      }
      for (const { path, schema } of quantitiesOf(kind)) {
        expect(accepts(spoil(path, schema.minimum - 1)), path).toBe(false)
        expect(accepts(spoil(path, schema.maximum * 1.001 + 1)), path).toBe(false)
      }
      for (const { path } of leavesOf(kind)) expect(accepts(spoil(path, { wrong: true })), path).toBe(false)
      for (const { path } of objectsOf(kind)) expect(accepts(spoil(`${path}.stray`, 1)), path).toBe(false)
    }
  })
})
