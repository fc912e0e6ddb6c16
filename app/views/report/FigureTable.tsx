import { Fragment } from 'react'
import {
  type GripResult,
  METRICS,
  type Scenario,
  type StrategyId,
  textIn,
  type Why,
  wordingOf,
} from '../../../sim/index.ts'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
import { NO_FIGURE } from '../../ui/format.ts'
import { Noted, walkNotes } from '../../ui/Noted.tsx'
import type { Column } from './columns.ts'
import { causeRows, figureRows } from './figures.ts'
import type { Told } from './useCauses.ts'

interface Props {
  scenario: Scenario
  columns: Column[]
  told: Partial<Record<StrategyId, Told>>
  units: UnitSystem
}

/** The figures of all strategies side by side, and beneath them the force taken apart into its causes. */
export function FigureTable({ scenario, columns, told, units }: Props) {
  const results = columns.map(({ run }) => run?.result ?? null)
  const whys = columns.map(({ strategy }) => told[strategy]?.why ?? null)
  const rows = figureRows(results, units)
  const shown = rows.filter(({ cells }) => cells.some((cell) => cell !== NO_FIGURE))
  const missing = columns.flatMap(({ label }, index) => missingOf(results[index], scenario, label))
  return (
    <section aria-label="Figures">
      <table className="report-table" onKeyDown={walkNotes}>
        <thead>
          <tr>
            <th scope="col">Figures</th>
            {columns.map(({ strategy, label }) => (
              <th key={strategy} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ metric, unit, cells }, place) => (
            <tr key={metric.id} data-metric={metric.id}>
              <th scope="row">
                <Noted note={textIn(metric.note, wordingOf(units))} place={place}>
                  {metric.label}
                </Noted>{' '}
                <span className="unit">{unit}</span>
              </th>
              {cells.map((cell, index) => (
                <td key={columns[index]!.strategy}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
        <Causes columns={columns} whys={whys} units={units} />
      </table>
      {missing.length > 0 && <p className="report-small">{missingText(missing, columns.length)}</p>}
      {whys.some((why) => why && why.force !== null) && <p className="report-small">{RULE}</p>}
    </section>
  )
}

const RULE =
  'Causes are taken away in all combinations, or in orders drawn at random where many act, and each counts with the mean of what its removal changes (Shapley value), so that they add up. Below: what its removal changes alone … as the last. The part is taken as one that cannot be lost meanwhile.'

const TAKEN: Record<Why['figure'], string> = { peak: 'of the peak', hold: 'of the hold' }

function Causes({ columns, whys, units }: { columns: Column[]; whys: (Why | null)[]; units: UnitSystem }) {
  const { rows, sums } = causeRows(whys, units)
  if (rows.length === 0) return null
  const { symbol } = quantityUnit('force', units)
  return (
    <tbody className="report-causes">
      <tr className="report-head">
        <th scope="row">
          What made the force <span className="unit">{symbol}</span>
        </th>
        {whys.map((why, index) => (
          <td key={columns[index]!.strategy}>{why && TAKEN[why.figure]}</td>
        ))}
      </tr>
      {rows.map(({ label, cells }) => (
        <tr key={label}>
          <th scope="row">{label}</th>
          {cells.map((cell, index) => (
            <td key={columns[index]!.strategy}>
              {cell ? (
                <>
                  {cell.force} <span className="report-share">{cell.share}</span>
                </>
              ) : (
                NO_FIGURE
              )}
            </td>
          ))}
        </tr>
      ))}
      <tr className="report-sum">
        <th scope="row">Together</th>
        {sums.map((sum, index) => (
          <td key={columns[index]!.strategy}>
            {sum} <span className="report-share">{sum === NO_FIGURE ? '' : '100 %'}</span>
          </td>
        ))}
      </tr>
    </tbody>
  )
}

interface Missing {
  figure: string
  strategy: string
  why: string
}

/** What a strategy has no figure of, and why; of a grip without contact that one thing says it all. */
function missingOf(result: GripResult | null | undefined, scenario: Scenario, strategy: string): Missing[] {
  if (!result) return []
  const missing = METRICS.filter((metric) => metric.value(result) === null).map((metric) => ({
    figure: metric.label,
    strategy,
    why: metric.missing(result, scenario),
  }))
  return result.metrics.contactTime === null ? [{ ...missing[0]!, figure: 'Figures of the grip' }] : missing
}

/** Every reason once, with the figures and, where not all have it, the strategies that it is of. */
function missingText(missing: Missing[], strategies: number) {
  const reasons = [...new Set(missing.map(({ why }) => why))]
  return reasons.map((why) => {
    const of = missing.filter((each) => each.why === why)
    const figures = [...new Set(of.map(({ figure }) => figure))]
    const names = [...new Set(of.map(({ strategy }) => strategy))]
    const whose = names.length < strategies ? ` (${names.join(', ')})` : ''
    return (
      <Fragment key={why}>
        {figures.join(', ')}
        {whose}: {why}{' '}
      </Fragment>
    )
  })
}
