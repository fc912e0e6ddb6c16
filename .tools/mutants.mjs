// What can be broken in a source file: one small change at one place inside a function.
import { parseAst } from 'rolldown/parseAst'

/**
 * @typedef {{ start: number, end: number, line: number, from: string, to: string }} Mutant
 * The text between `start` and `end`, and what it becomes.
 */

/** @type {Record<string, string>} */
const OPERATORS = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '>=',
  '<=': '<',
  '>': '<=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
}

/**
 * All mutants of a TypeScript source, in the order of their places.
 * @param {string} source
 * @returns {Mutant[]}
 */
export function mutantsOf(source) {
  /** @type {Mutant[]} */
  const found = []
  const add = (/** @type {number} */ start, /** @type {number} */ end, /** @type {string} */ to) => {
    const line = source.slice(0, start).split('\n').length
    found.push({ start, end, line, from: source.slice(start, end), to })
  }
  walk(parseAst(source, { lang: 'ts' }), false, (node) => {
    const text = (/** @type {any} */ part) => source.slice(part.start, part.end)
    switch (node.type) {
      case 'BinaryExpression':
      case 'LogicalExpression':
      case 'AssignmentExpression': {
        const other = OPERATORS[node.operator]
        const start = source.indexOf(node.operator, node.left.end)
        if (other && start < node.right.start) add(start, start + node.operator.length, other)
        break
      }
      case 'UnaryExpression':
        if (node.operator === '-' || node.operator === '!') add(node.start, node.argument.start, '')
        break
      case 'ConditionalExpression':
        add(node.consequent.start, node.alternate.end, `${text(node.alternate)} : ${text(node.consequent)}`)
        break
      case 'IfStatement':
        add(node.test.start, node.test.end, `!(${text(node.test)})`)
        break
      case 'Literal':
        if (typeof node.value === 'number') add(node.start, node.end, node.value === 0 ? '1' : `(2 * ${node.raw})`)
        // A word of a sentence, not a name or a key.
        if (typeof node.value === 'string' && / /.test(node.value)) add(node.start, node.end, `'broken'`)
        break
      case 'TemplateElement':
        if (/[a-z]{2}/i.test(node.value.raw)) add(...inside(source, node), 'broken')
        break
      case 'ReturnStatement':
        if (node.argument) add(node.argument.start, node.argument.end, '0')
        break
    }
  })
  return found.sort((a, b) => a.start - b.start)
}

/** @param {any} node a piece of a template, with or without what encloses it @returns {[number, number]} */
function inside(/** @type {string} */ source, node) {
  const start = source.indexOf(node.value.raw, node.start)
  return [start, start + node.value.raw.length]
}

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'])

/** Visits what runs when a function is called; types are no code. */
function walk(/** @type {any} */ node, /** @type {boolean} */ called, /** @type {(node: any) => void} */ visit) {
  if (Array.isArray(node)) for (const each of node) walk(each, called, visit)
  if (node === null || typeof node !== 'object' || typeof node.type !== 'string') return
  if (/^TS(Type|Interface|Literal|Enum|Declare)/.test(node.type)) return
  if (called) visit(node)
  const within = called || FUNCTIONS.has(node.type)
  for (const [key, value] of Object.entries(node))
    if (value !== null && typeof value === 'object' && key !== 'parent') walk(value, within, visit)
}

/**
 * Some mutants out of many files: lines are drawn by lot, and of each line one mutant, so that a long line counts no more.
 * @param {{ file: string, mutants: Mutant[] }[]} files
 * @param {number} count
 * @param {number} seed the same seed draws the same lines of the same files
 * @returns {{ file: string, mutant: Mutant }[]}
 */
export function draw(files, count, seed) {
  const random = lots(seed)
  const lines = files.flatMap(({ file, mutants }) => {
    const numbers = [...new Set(mutants.map(({ line }) => line))]
    return numbers.map((number) => ({ file, mutants: mutants.filter(({ line }) => line === number) }))
  })
  const drawn = []
  while (drawn.length < count && lines.length > 0) {
    const [line] = lines.splice(random(lines.length), 1)
    const mutant = line?.mutants[random(line.mutants.length)]
    if (line && mutant) drawn.push({ file: line.file, mutant })
  }
  return drawn
}

/** Whole numbers from 0 to below a limit, by lot: Marsaglia's xorshift of 32 bits. */
function lots(/** @type {number} */ seed) {
  let state = (seed * 2654435761 + 1) >>> 0 || 1
  return (/** @type {number} */ limit) => {
    for (let skip = 0; skip < 4; skip++) {
      state ^= state << 13
      state ^= state >>> 17
      state ^= state << 5
      state >>>= 0
    }
    return state % limit
  }
}
