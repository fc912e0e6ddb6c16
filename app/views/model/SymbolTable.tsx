import { shownUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, formatPlain } from '../../ui/format.ts'
import { UnitText } from '../../ui/Symbols.tsx'
import { MathSymbol } from './MathSymbol.tsx'
import type { SymbolRow } from './symbols.ts'

interface Props {
  title: string
  rows: SymbolRow[]
  /** Exponent of the contact law, on which the unit of the part's stiffness hangs. */
  exponent: number
}

/** Symbol, what it stands for, its value on the bench and its unit. */
export function SymbolTable({ title, rows, exponent }: Props) {
  const system = useView((state) => state.units)
  return (
    <table className="model-table" aria-label={`Symbols: ${title}`}>
      <thead>
        <tr>
          <th scope="col">Symbol</th>
          <th scope="col">Quantity</th>
          <th scope="col" className="figure">
            Here
          </th>
          <th scope="col">Unit</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ symbol, title: name, unit, shown, path, value, words, basis }) => {
          const { symbol: written, toShown } = shownUnit(shown ? { unit, shown } : { unit }, system, exponent)
          const figure = path === '' ? formatFigure : formatPlain
          return (
            <tr key={`${symbol} ${path}`}>
              <td>{symbol !== '' && <MathSymbol symbol={symbol} />}</td>
              <th scope="row">
                {name}
                {path !== '' && <code>{path}</code>}
                {basis !== '' && <small>{basis}</small>}
              </th>
              <td className="figure">
                {value === null ? <span className="unit">{words}</span> : figure(toShown(value))}
              </td>
              <td>
                <UnitText symbol={written} />
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
