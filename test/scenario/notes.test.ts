import { describe, expect, it } from 'vitest'
import { knowsUnit, shownUnit } from '../../app/read/units.ts'
import { AXIS_PRESETS, PRESETS, readPath } from '../../sim/index.ts'
import { isChoice, KINDS, leavesOf, quantitiesOf } from './schema-walk.ts'

/** Nothing is usual about the seed of a noise. */
const ARBITRARY = ['run.seed']
const sentences = (text: string) => text.split(/[.?] (?=[A-Z])/).length

describe.each(KINDS)('notes of a %s axis', (kind) => {
  it('give every quantity a title, a symbol, a unit that the page knows, and one sentence', () => {
    for (const { path, schema } of quantitiesOf(kind)) {
      expect(schema.title, path).toMatch(/^[A-Z]/)
      expect(schema.symbol, path).toMatch(/^\S+$/)
      expect(knowsUnit(schema.shown ?? schema.unit), path).toBe(true)
      expect(schema.description, path).toMatch(/^[A-Z].{28,}[^.]\.$/)
      expect(sentences(schema.description), path).toBe(1)
    }
  })

  it('say in no two places the same', () => {
    const notes = quantitiesOf(kind).map(({ path, schema }) => [
      path.split('.').slice(0, -1).join('.'),
      schema.description,
    ])
    const elsewhere = notes.filter(([, note], index) => notes.findIndex(([, other]) => other === note) !== index)
    expect(elsewhere).toEqual([])
  })

  it('give every choice a note', () => {
    for (const { path, schema } of leavesOf(kind))
      if (isChoice(schema) || schema.type === 'boolean') expect(schema.description, path).toMatch(/^[A-Z].{28,}\.$/)
  })

  it('give every quantity a usual range inside the allowed one, and narrower', () => {
    for (const { path, schema } of quantitiesOf(kind)) {
      if (ARBITRARY.includes(path)) continue
      const { usual, minimum, maximum } = schema
      expect(usual, path).toBeDefined()
      const [low, high] = usual!
      expect(low, path).toBeLessThan(high)
      expect(low, path).toBeGreaterThanOrEqual(minimum)
      expect(high, path).toBeLessThanOrEqual(maximum)
      expect((high - low) / (maximum - minimum), path).toBeLessThan(1)
    }
  })

  it('call usual what the defaults, the presets and the generic axes have', () => {
    for (const { path, schema } of quantitiesOf(kind)) {
      if (ARBITRARY.includes(path)) continue
      const presets = PRESETS.filter(({ scenario }) => scenario.actuator.kind === kind).map(({ scenario }) => scenario)
      const axes = AXIS_PRESETS.filter(({ actuator }) => actuator.kind === kind)
      const found = [...presets, ...axes].map((owner) => readPath(owner as (typeof presets)[number], path))
      for (const value of [schema.default, ...found])
        if (typeof value === 'number') {
          expect(value, path).toBeGreaterThanOrEqual(schema.usual![0])
          expect(value, path).toBeLessThanOrEqual(schema.usual![1])
        }
    }
  })

  it('show the usual range in figures that are short in both systems of units', () => {
    for (const { path, schema } of quantitiesOf(kind))
      for (const end of schema.usual ?? [])
        for (const system of ['si', 'us'] as const) {
          const shown = Math.abs(shownUnit(schema, system, 1).toShown(end))
          if (shown !== 0) expect(shown >= 1e-5 && shown < 1e6, `${path} ${shown}`).toBe(true)
        }
  })
})
