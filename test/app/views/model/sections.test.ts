import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { mathml, sentence } from '../../../../.tools/tex.ts'
import { FORMULAS } from '../../../../app/views/model/formulas.ts'
import { type Block, type Section, tex } from '../../../../app/views/model/section.ts'
import { OWN_SECTIONS, SECTIONS } from '../../../../app/views/model/sections/index.ts'
import { SOURCES } from '../../../../app/views/model/sources.ts'
import { symbolRows } from '../../../../app/views/model/symbols.ts'
import {
  ALL_PRESETS,
  FIXED_FIGURES,
  type GripKind,
  JOB_SCHEMAS,
  type JobId,
  SIMPLIFICATIONS,
} from '../../../../sim/index.ts'
import { make } from '../../../scenario/make.ts'
import { full, KINDS, quantitiesOf } from '../../../scenario/schema-walk.ts'

const scenarioOf = (kind: GripKind) => make(full(kind))
const [FRAME] = SECTIONS as [Section]
const rowsOf = (section: Section) => symbolRows(section, scenarioOf('screw'))

/** Jobs that the page tells, each with what is its own and a file that has every key of it. */
const OTHERS = Object.entries(OWN_SECTIONS).flatMap(([job, sections]) => {
  const preset = ALL_PRESETS.find(({ scenario }) => scenario.job === job)!
  return sections ? [{ job, sections, scenario: preset.scenario }] : []
})
const EVERY = [...SECTIONS, ...OTHERS.flatMap(({ sections }) => sections)]
const spelled = (symbol: string) => symbol.normalize('NFD').replaceAll('\u0307', '').replaceAll('µ', 'μ')

/** What stands between $ in a sentence, or the whole of an equation: outside the build the TeX as it was written. */
const formulas = ({ kind, html }: Block) =>
  kind === 'equation' ? [html] : html.split('$').filter((_, place) => place % 2 === 1)

/** Symbols in TeX, spelled as in the schema. */
function symbolsIn(source: string): string[] {
  const bare = source
    .normalize('NFD')
    .replaceAll('\u0307', '')
    .replaceAll('µ', 'μ')
    .replace(/\\(mathrm|text|begin|end)\{[^}]*\}/g, ' ')
    .replace(/\\[A-Za-z]+/g, ' ')
    .replaceAll('π', ' ')
  return [...bare.matchAll(/(Δ?\p{L})(\^\*)?(_(?:\{\p{L}\}|[\p{L}\d]+))?/gu)].map(
    ([, letter, star, below]) => `${letter}${star ? '*' : ''}${below ?? ''}`,
  )
}

describe('sections of the model page', () => {
  it('have ids and titles of their own, and sources and fixed figures that exist', () => {
    expect(new Set(EVERY.map(({ id }) => id)).size).toBe(EVERY.length)
    expect(new Set(EVERY.map(({ title }) => title)).size).toBe(EVERY.length)
    const sources = SOURCES.map(({ id }) => id)
    const fixed = FIXED_FIGURES.map(({ id }) => id)
    for (const section of EVERY) {
      expect(sources).toEqual(expect.arrayContaining(section.sources))
      expect(fixed).toEqual(expect.arrayContaining(section.fixed))
    }
  })

  it.each(SECTIONS.map((section) => [section.id, section] as const))(
    '%s: no symbol means two things, and every key exists',
    (_, section) => {
      const rows = rowsOf(section)
      const alike = rows.map(({ symbol }) => symbol).filter((symbol) => symbol !== '')
      expect(new Set(alike).size).toBe(alike.length)
      for (const path of section.quantities)
        expect(
          rows.map((row) => row.path),
          path,
        ).toContain(path)
    },
  )

  it.each(SECTIONS.map((section) => [section.id, section] as const))(
    '%s: every symbol of its formulas stands in its table or in that of the frame, and the other way round',
    (_, section) => {
      const used = new Set(section.blocks.flatMap(formulas).flatMap(symbolsIn))
      const listed = rowsOf(section).map(({ symbol }) => spelled(symbol))
      const known = new Set([...listed, ...rowsOf(FRAME).map(({ symbol }) => spelled(symbol))])
      expect([...used].filter((symbol) => !known.has(symbol))).toEqual([])
      expect(listed.filter((symbol) => symbol !== '' && !used.has(symbol))).toEqual([])
    },
  )

  it.each(KINDS)('tell every quantity of a %s axis with the symbol, title and unit of the schema', (kind) => {
    const rows = SECTIONS.flatMap((section) => symbolRows(section, scenarioOf(kind)))
    for (const { path, schema } of quantitiesOf(kind)) {
      const row = rows.find((each) => each.path === path && each.words !== 'another kind of axis')
      expect(row, path).toMatchObject({ symbol: schema.symbol, unit: schema.unit })
      expect(row?.title, path).toBe(schema.title)
    }
  })

  it('show every fixed figure where it is used', () => {
    const shown = new Set(SECTIONS.flatMap(({ fixed }) => fixed))
    expect(FIXED_FIGURES.filter(({ id }) => !shown.has(id))).toEqual([])
  })
})

describe.each(OTHERS)('sections of a $job', ({ job, sections, scenario }) => {
  const rows = (section: Section) => symbolRows(section, scenario)

  it.each(sections.map((section) => [section.id, section] as const))(
    '%s: every symbol stands once in its table or in that of the frame, and the other way round',
    (_, section) => {
      const listed = rows(section).map(({ symbol }) => spelled(symbol))
      expect(new Set(listed).size).toBe(listed.length)
      const used = new Set(section.blocks.flatMap(formulas).flatMap(symbolsIn))
      const known = new Set([...listed, ...rows(sections[0]!).map(({ symbol }) => spelled(symbol))])
      expect([...used].filter((symbol) => !known.has(symbol))).toEqual([])
      expect(listed.filter((symbol) => symbol !== '' && !used.has(symbol))).toEqual([])
      for (const { path, title } of rows(section)) expect(title, path).not.toBe('')
    },
  )

  it('tell every quantity that the job has and a grip has not', () => {
    const told = new Set(sections.flatMap(({ quantities }) => quantities.map((path) => path.replace(/\[\d+\]/, ''))))
    const all = ownQuantities(job as JobId)
    expect(all.length).toBeGreaterThan(10)
    expect(all.filter((path) => !told.has(path))).toEqual([])
  })
})

/** Paths of quantities in the groups that a grip has not; an item of a list without its place. */
function ownQuantities(job: JobId): string[] {
  type Node = { symbol?: string; anyOf?: Node[]; items?: Node; properties?: Record<string, Node> }
  const grip = Object.keys((JOB_SCHEMAS.grip.screw as unknown as Node).properties!)
  const inside = (node: Node, path: string): string[] => {
    if (node.symbol !== undefined) return [path]
    const inner = [...(node.anyOf ?? []), ...(node.items ? [node.items] : [])]
    return [
      ...inner.flatMap((each) => inside(each, path)),
      ...Object.entries(node.properties ?? {}).flatMap(([key, each]) => inside(each, `${path}.${key}`)),
    ]
  }
  const [first] = Object.values(JOB_SCHEMAS[job])
  return Object.entries((first as unknown as Node).properties!).flatMap(([key, node]) =>
    grip.includes(key) ? [] : inside(node, key),
  )
}

describe('formulas of the simplifications', () => {
  it('exist for each closed form and for nothing else', () => {
    const closed = SIMPLIFICATIONS.filter(({ bound }) => bound.how === 'formula').map(({ id }) => id)
    expect(Object.keys(FORMULAS).sort()).toEqual(closed.sort())
  })

  it('use symbols that the sections know, or that the entry itself speaks of', () => {
    const known = new Set(SECTIONS.flatMap(rowsOf).map(({ symbol }) => spelled(symbol)))
    /** Results, and assumptions that the entry names. */
    const own = ['ΔU', 't_d', 'F_k', 'F_b', 'μ_g', 'h', 'l_g', 'T_20', 'P_F', 'P_Cu', 'Δφ', 'f']
    for (const [id, block] of Object.entries(FORMULAS))
      expect(
        formulas(block)
          .flatMap(symbolsIn)
          .filter((symbol) => !known.has(symbol) && !own.includes(symbol)),
        id,
      ).toEqual([])
  })
})

describe('TeX', () => {
  it('becomes MathML in every section and formula', () => {
    for (const { blocks } of EVERY)
      for (const { kind, html } of blocks) {
        const made = kind === 'equation' ? mathml(html, true) : sentence(html)
        expect(made).not.toMatch(/merror|ParseError|\$|\\/)
        if (kind === 'equation') expect(made).toMatch(/^<math display="block".*<\/math>$/s)
      }
    for (const { html } of Object.values(FORMULAS)) expect(mathml(html, true)).toMatch(/^<math/)
  })

  it('sets a descriptive subscript upright, one that stands for a quantity italic, and text as text', () => {
    expect(mathml('F_n', false)).toContain('<mi mathvariant="normal">n</mi>')
    expect(mathml('F_{n}', false)).not.toContain('mathvariant')
    expect(sentence('a < b & $x_1$')).toMatch(/^a &lt; b &amp; <math/)
    expect(() => mathml(tex`\frac{a`.html, true)).toThrow()
  })
})

describe('sources', () => {
  const files = readdirSync('sim', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('study'))
    .map((name) => readFileSync(`sim/${name}`, 'utf8').replace(/\s*\n\s*(\*|\/\/)?\s*/g, ' '))

  it.each(SOURCES.map((source) => [source.id, source] as const))(
    '%s is cited in the simulator as here',
    (_, source) => {
      const all = files.join('\n')
      for (const mark of source.marks) expect(all.includes(mark), mark).toBe(true)
      const beside = files.some((text) => source.marks.every((mark) => text.includes(mark)))
      expect(beside || source.id === 'kessler').toBe(true)
      if (source.memory) expect(source.marks.join(' ')).toContain('from memory')
    },
  )

  it('are all referred to by a section', () => {
    const used = new Set(EVERY.flatMap(({ sources }) => sources))
    expect(SOURCES.filter(({ id }) => !used.has(id))).toEqual([])
  })
})
