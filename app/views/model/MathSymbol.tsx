import { createElement, type ReactNode } from 'react'

/** Letter, an upright Δ before it, a dot above it, a star behind it, and a subscript. */
const PARTS = /^(Δ?)(\p{L})(\u0307?)(\*?)(?:_(.+))?$/u

const element = (name: string, ...children: ReactNode[]) => createElement(name, null, ...children)
const upright = (text: string) => createElement('mi', { mathvariant: 'normal' }, text)

/**
 * A symbol as the schema spells it, set as the build sets it in equations: a subscript of letters or digits is a description and
 * upright; one in braces or in Greek stands for a quantity and is italic.
 */
export function MathSymbol({ symbol }: { symbol: string }) {
  const [, delta, letter, dot, star, below] = PARTS.exec(symbol.normalize('NFD')) ?? []
  if (letter === undefined) return symbol
  const plain = element('mi', letter === 'µ' ? 'μ' : letter)
  const dotted = dot ? element('mover', plain, element('mo', '˙')) : plain
  const starred = star ? element('msup', dotted, element('mo', '∗')) : dotted
  const whole = below ? element('msub', starred, subscript(below)) : starred
  return element('math', delta ? upright(delta) : null, whole)
}

function subscript(text: string): ReactNode {
  const inner = text.replace(/^\{(.*)\}$/, '$1').replace('µ', 'μ')
  if (/^\d+$/.test(inner)) return element('mn', inner)
  return inner === text && /^[A-Za-z\d]+$/.test(inner) ? upright(inner) : element('mi', inner)
}
