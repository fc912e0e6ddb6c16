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
