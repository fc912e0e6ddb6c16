import { expect, it } from 'vitest'
import { draw, mutantsOf } from '../../.tools/mutants.mjs'

const broken = (source: string) =>
  mutantsOf(source).map(({ start, end, to }) => source.slice(0, start) + to + source.slice(end))

it('breaks operators, comparisons, constants, conditions and returned values, one at a time', () => {
  expect(broken('const f = (x: number) => x + 3')).toEqual([
    'const f = (x: number) => x - 3',
    'const f = (x: number) => x + (2 * 3)',
  ])
  expect(broken('function f(x) { if (x <= 0) return -x }')).toEqual([
    'function f(x) { if (!(x <= 0)) return -x }',
    'function f(x) { if (x < 0) return -x }',
    'function f(x) { if (x <= 1) return -x }',
    'function f(x) { if (x <= 0) return 0 }',
    'function f(x) { if (x <= 0) return x }',
  ])
  expect(broken('const f = (µ) => (µ ? 1 : g)')).toContain('const f = (µ) => (µ ? g : 1)')
})

it('breaks sentences, in quotes and in templates, but no names', () => {
  const source = `const say = (n) => [\`µ: \${n} newtons\`, "a long way", "key", \`\${n}\`]`
  expect(broken(source)).toEqual([source.replace(' newtons', 'broken'), source.replace('"a long way"', "'broken'")])
})

it('leaves alone what no call runs: constants of the file, types', () => {
  expect(broken('const A = 1 + 2\ninterface B { c: 1 | 2 }\nconst f = (d: 1 | -2): 3 => d')).toEqual([])
})

it('draws the same lines by the same seed, others by another, each line once', () => {
  const source = Array.from({ length: 50 }, (_, n) => `const f${n} = (x) => x + ${n} * x`).join('\n')
  const files = [{ file: 'a.ts', mutants: mutantsOf(source) }]
  const lines = (seed: number) => draw(files, 10, seed).map(({ mutant }) => mutant.line)
  expect(lines(1)).toEqual(lines(1))
  expect(lines(1)).not.toEqual(lines(2))
  expect(new Set(lines(1)).size).toBe(10)
  expect(draw(files, 1000, 1)).toHaveLength(50)
})
