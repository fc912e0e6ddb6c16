import { describe, expect, it } from 'vitest'
import { sentence } from '../../../app/parameters/faultText.ts'
import { firstValue } from '../../../app/parameters/first.ts'
import { lineOf, sectionsOf } from '../../../app/parameters/sections.ts'
import { differences, type Field, fieldAt } from '../../../app/read/scenario/walk.ts'
import {
  checkScenario,
  editScenario,
  type GripKind,
  JOB_SCHEMAS,
  PRESETS,
  SCHEMAS,
  type Scenario,
} from '../../../sim/index.ts'
import { CAP_PRESETS } from '../../../sim/others.ts'

const KINDS = Object.keys(SCHEMAS) as GripKind[]

function paths(field: Field): string[] {
  if (field.kind === 'group') return field.fields.flatMap(paths)
  return field.kind === 'list' ? field.fieldsAt(0).flatMap(paths) : [field.path]
}

/** Leaves of the schema that a person can set, by their paths; entries of lists under index 0. */
function leaves(node: Record<string, unknown>, path = ''): string[] {
  const options = node.anyOf as Record<string, unknown>[] | undefined
  const object = options?.find((option) => option.type === 'object') ?? node
  if (object.type === 'array') return leaves(object.items as Record<string, unknown>, `${path}[0]`)
  if (!object.properties) return node.const === undefined ? [path] : []
  return Object.entries(object.properties as Record<string, Record<string, unknown>>).flatMap(([key, inner]) =>
    leaves(inner, path ? `${path}.${key}` : key),
  )
}

const scenario = (changes: object = {}): Scenario => {
  const checked = checkScenario({ format: 'jawbench-scenario', version: 2, ...changes })
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

describe('the panel', () => {
  it.each(KINDS)('has a field for every key of a %s scenario, once', (kind) => {
    const shown = sectionsOf(kind).flatMap((section) => section.paths.flatMap((path) => paths(fieldAt(kind, path)!)))
    // Kind and family have a list of their own; the spread is edited where many grips are asked for.
    const wanted = leaves(SCHEMAS[kind] as unknown as Record<string, unknown>).filter(
      (path) => path !== 'actuator.family' && !path.startsWith('spread.'),
    )
    expect(shown.sort()).toEqual(wanted.sort())
  })

  it('sums a folded section up in one line', () => {
    const part = sectionsOf('screw').find((section) => section.id === 'part')!
    const cup = scenario({ part: { width: 0.07, mass: 0.25, stiffness: 150000, crackForce: 40 } })
    expect(lineOf(part, cup, 'si').replaceAll('\u00a0', ' ')).toBe('70 mm · 250 g · 150 N/mm · cracks at 40 N')
    expect(lineOf(part, cup, 'us')).toContain('8.992\u00a0lbf')
  })

  it('offers words to choose from, with the labels of the format', () => {
    const layout = fieldAt('screw', 'jaws.layout')
    expect(layout).toMatchObject({
      kind: 'choice',
      options: [{ value: 'mirrored', label: 'Both jaws driven' }, { value: 'anvil' }],
    })
    expect(fieldAt('screw', 'actuator.motor.openLoop')).toMatchObject({
      kind: 'choice',
      options: [{ value: false }, { value: true }],
    })
  })

  it('counts what differs from the preset', () => {
    const cup = scenario()
    const other = editScenario(cup, [
      { path: 'part.mass', value: 0.3 },
      { path: 'part.crackForce', value: 40 },
    ])
    expect(other.ok && differences(other.scenario, cup)).toBe(2)
    expect(differences(cup, structuredClone(cup))).toBe(0)
  })
})

describe('an optional key', () => {
  const optional = (field: Field): string[] => {
    if (field.kind === 'group' && field.absent === 'never') return field.fields.flatMap(optional)
    return (field.kind === 'group' || field.kind === 'quantity') && field.absent !== 'never' ? [field.path] : []
  }

  it('starts with a value that the checks accept, on every preset', () => {
    const keys = sectionsOf('screw').flatMap((section) =>
      section.paths.flatMap((path) => optional(fieldAt('screw', path)!)),
    )
    expect(keys).toEqual(expect.arrayContaining(['arm.lift', 'run.step', 'events.powerLoss', 'part.crackForce']))
    for (const { id, scenario: preset } of PRESETS) {
      for (const path of keys) {
        const field = fieldAt(preset.actuator.kind, path)
        const value = firstValue(preset, path, field?.kind === 'quantity' ? field.schema : undefined)
        expect(editScenario(preset, [{ path, value }]), `${id} ${path} ${JSON.stringify(value)}`).toMatchObject({
          ok: true,
        })
      }
      const moves = [...preset.arm.moves, firstValue(preset, 'arm.moves')]
      expect(editScenario(preset, [{ path: 'arm.moves', value: moves }]), id).toMatchObject({ ok: true })
    }
  })
})

describe('the panel of a closure', () => {
  const sections = sectionsOf('spindle', 'cap')

  it('has a field for every key but kind and family, the spread and the arm, once', () => {
    const shown = sections.flatMap((section) =>
      section.paths.flatMap((path) => paths(fieldAt('spindle', path, 'cap')!)),
    )
    const wanted = leaves(JOB_SCHEMAS.cap.spindle as unknown as Record<string, unknown>).filter(
      (path) => path !== 'actuator.family' && !/^(spread|arm)\./.test(path),
    )
    expect(shown.sort()).toEqual(wanted.sort())
  })

  it('starts optional keys with values that the checks accept', () => {
    for (const { scenario: preset } of CAP_PRESETS)
      for (const path of [
        'window.torque.most',
        'window.leastTurns',
        'closure.stripTorque',
        'closure.misstart',
        'events.release',
        'actuator.transmission.coulombBack',
      ]) {
        const field = fieldAt('spindle', path, 'cap')
        const value = firstValue(preset, path, field?.kind === 'quantity' ? field.schema : undefined)
        expect(editScenario(preset, [{ path, value }]), path).toMatchObject({ ok: true })
      }
    expect(firstValue(CAP_PRESETS[0]!.scenario, 'actuator.transmission.coulombBack')).toBe(0.12)
  })
})

describe('a refused edit', () => {
  it('is explained in the units on the page, with the name of the key it concerns', () => {
    const cup = scenario()
    const refused = editScenario(cup, [{ path: 'part.width', value: 0.2 }])
    expect(refused.ok).toBe(false)
    if (refused.ok) return
    const text = sentence(refused.faults[0]!, 'part.width', cup, 'si').replaceAll('\u00a0', ' ')
    expect(text).toBe("Opening: given 90 mm. Allowed: more than the part's width of 200 mm.")
    const us = sentence(refused.faults[0]!, 'jaws.opening', cup, 'us').replaceAll('\u00a0', ' ')
    expect(us).toBe("Given 3.543 in. Allowed: more than the part's width of 7.874 in.")
  })
})
