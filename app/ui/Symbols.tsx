/** Symbols and units as ISO 80000 sets them: quantities italic, units and descriptive subscripts upright, powers raised. */
import { Fragment } from 'react'

/** `F_mark` becomes an italic F with an upright subscript. */
export function SymbolText({ symbol }: { symbol: string }) {
  const [base, ...below] = symbol.split('_')
  return (
    <span className="symbol" aria-hidden="true">
      <i>{base}</i>
      {below.length > 0 && <sub>{below.join(' ')}</sub>}
    </span>
  )
}

/** `N/mm^1.5` becomes N/mm with a raised 1.5. */
export function UnitText({ symbol }: { symbol: string }) {
  return (
    <span className="unit">
      {symbol.split(/(\^[\d.]+)/).map((piece, place) => (
        <Fragment key={place}>{piece.startsWith('^') ? <sup>{piece.slice(1)}</sup> : piece}</Fragment>
      ))}
    </span>
  )
}

/** A text with symbols in it: `k_p` becomes an italic k with an upright subscript. */
export function FormulaText({ text }: { text: string }) {
  return text.split(/(\p{L}_[\p{L}\d]+)/u).map((piece, place) => {
    const [base, below] = piece.split('_')
    return place % 2 === 0 ? (
      <Fragment key={place}>{piece}</Fragment>
    ) : (
      <Fragment key={place}>
        <i>{base}</i>
        <sub>{below}</sub>
      </Fragment>
    )
  })
}
