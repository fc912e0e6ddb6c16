/** The published JSON Schema in the eyes of another validator than the one that checks scenarios. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { ALL_PRESETS, JOB_SCHEMAS, type JobId, publishedSchema } from '../../sim/index.ts'
import { make } from './make.ts'
import { soundInput } from './random.ts'
import { full, KINDS, leavesOf, type Node, objectsOf, quantitiesOf } from './schema-walk.ts'

const JOB_IDS = Object.keys(JOB_SCHEMAS) as JobId[]
const text = JSON.stringify(publishedSchema())
const published = z.fromJSONSchema(JSON.parse(text))
const accepts = (value: unknown) => published.safeParse(value).success

describe('published JSON Schema', () => {
  it('is plain JSON', () => {
    expect(structuredClone(publishedSchema())).toEqual(JSON.parse(text))
  })

  it('takes files that leave out what has a default', () => {
    expect(accepts({})).toBe(true)
    expect(accepts({ part: { mass: 0.3 }, arm: { moves: [{}] } })).toBe(true)
    expect(accepts({ actuator: { kind: 'direct', motor: { forceConstant: 12 } } })).toBe(true)
    // zod fills in the kind by its default, so what a file must name is read from the schema itself
    const { anyOf } = (publishedSchema() as { properties: { actuator: { anyOf: { required?: string[] }[] } } })
      .properties.actuator
    expect(anyOf.map(({ required }) => required)).toEqual([undefined, ['kind'], ['kind']])
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

describe.each(JOB_IDS.filter((job) => job !== 'grip'))('the published schema of a %s', (job) => {
  const own = z.fromJSONSchema(JSON.parse(JSON.stringify(publishedSchema(job))))

  it('takes its presets, and a file that leaves out all but the job', () => {
    const presets = ALL_PRESETS.filter(({ scenario }) => scenario.job === job)
    expect(presets.length).toBeGreaterThan(0)
    for (const { scenario } of presets) expect(own.safeParse(scenario).error).toBeUndefined()
    expect(own.safeParse({ job }).success).toBe(true)
  })

  it('refuses a file without a job, which is a grip, and keys that it has not got', () => {
    expect(own.safeParse({}).success).toBe(false)
    expect(own.safeParse({ job: 'grip' }).success).toBe(false)
    expect(own.safeParse({ job, jaws: {} }).success).toBe(false)
    expect(accepts({ job })).toBe(false)
  })
})
