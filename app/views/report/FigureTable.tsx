import { Fragment } from 'react'
import {
  type GripResult,
  jobOf,
  type Scenario,
  type StrategyId,
  shownAs,
  studyWords,
  textIn,
  type Why,
  whyFigure,
  wordingOf,
} from '../../../sim/index.ts'
import { effortUnit, type UnitSystem } from '../../read/units.ts'
import { NO_FIGURE } from '../../ui/format.ts'
import { Noted, walkNotes } from '../../ui/Noted.tsx'
import type { Column } from './columns.ts'
import { causeRows, figureRows, figuresOf } from './figures.ts'
import type { Leaving } from './fit.ts'
import type { Told } from './useCauses.ts'

interface Props {
  scenario: Scenario
  columns: Column[]
  told: Partial<Record<StrategyId, Told>>
  units: UnitSystem
  left: readonly Leaving[]
}

/** Figures that stay on a page that is full: those that tables show first, when it was done, and what motor and drive had to bear. */
function leadingOf(scenario: Scenario): readonly string[] {
  const { headlines, study, tune } = jobOf(scenario)
  return ['contactTime', tune.time, ...headlines, ...study.told, 'requiredForce', ...OF_DRIVE]
}

const OF_DRIVE = ['settledCurrent', 'peakCurrent', 'windingTemperature', 'stepError']

/** The figures of all strategies side by side, and beneath them the effort taken apart into its causes. */
export function FigureTable({ scenario, columns, told, units, left }: Props) {
  const results = columns.map(({ run }) => run?.result ?? null)
  const whys = columns.map(({ strategy }) => told[strategy]?.why ?? null)
  const rows = figureRows(scenario, results, units)
  const leading = leadingOf(scenario)
  const wanted = left.includes('figures') ? rows.filter(({ metric }) => leading.includes(metric.id)) : rows
  const shown = wanted.filter(({ cells }) => cells.some((cell) => cell !== NO_FIGURE))
  const missing = columns.flatMap(({ label }, index) => missingOf(results[index], scenario, label))
  return (
    <section aria-label="Figures">
      <table className="report-table" onKeyDown={walkNotes}>
        <Head title="Figures" columns={columns} />
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
        {!left.includes('causes') && <Causes {...{ scenario, columns, whys, units }} />}
      </table>
      {missing.length > 0 && !left.includes('figures') && (
        <p className="report-small">{missingText(missing, columns.length)}</p>
      )}
      {!left.includes('causes') && whys.some((why) => why && why.force !== null) && (
        <p className="report-small">{ruleOf(scenario)}</p>
      )}
    </section>
  )
}

function Head({ title, columns }: { title: string; columns: Column[] }) {
  return (
    <thead>
      <tr>
        <th scope="col">{title}</th>
        {columns.map(({ strategy, label }) => (
          <th key={strategy} scope="col">
            {label}
          </th>
        ))}
      </tr>
    </thead>
  )
}

function ruleOf(scenario: Scenario): string {
  const { unlost } = shownAs(scenario)
  return `Causes by their Shapley value${unlost && `, on ${unlost}`}; they add up.`
}

interface CausesProps extends Pick<Props, 'scenario' | 'columns' | 'units'> {
  whys: (Why | null)[]
}

function Causes({ scenario, columns, whys, units }: CausesProps) {
  const { rows, sums } = causeRows(scenario, whys, units)
  if (rows.length === 0) return null
  const { symbol } = effortUnit(scenario, units)
  return (
    <tbody className="report-causes">
      <tr className="report-head">
        <th scope="row">
          What made the {studyWords(scenario.job).effort} <span className="unit">{symbol}</span>
        </th>
        {whys.map((why, index) => (
          <td key={columns[index]!.strategy}>{why && whyFigure(why).share}</td>
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

/** The causes by themselves, for the further pages. */
export function CauseTable({ scenario, columns, told, units }: Omit<Props, 'left'>) {
  const whys = columns.map(({ strategy }) => told[strategy]?.why ?? null)
  return (
    <table className="report-table">
      <Head title="Causes" columns={columns} />
      <Causes {...{ scenario, columns, whys, units }} />
    </table>
  )
}

interface Missing {
  figure: string
  strategy: string
  why: string
}

/** What a strategy has no figure of, and why; of work that was never touched that one thing says most of it. */
function missingOf(result: GripResult | null | undefined, scenario: Scenario, strategy: string): Missing[] {
  if (!result) return []
  const missing = figuresOf(scenario)
    .filter((metric) => metric.value(result) === null)
    .map((metric) => ({ figure: metric.label, strategy, why: metric.missing(result, scenario) }))
  const [first] = missing
  if (!first || result.metrics.contactTime !== null) return missing
  const alike = missing.filter(({ why }) => why === first.why)
  return [
    { ...first, figure: `Figures of the ${studyWords(scenario.job).run}` },
    ...missing.filter((each) => !alike.includes(each)),
  ]
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
