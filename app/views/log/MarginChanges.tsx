/** The figures of each loop at the working point that comes closest to instability, as assumed and as fitted. */
import type { LoopId, LoopsResult } from '../../../sim/index.ts'
import { FigureUnit, LoopFigure } from '../../read/loops/Figure.tsx'
import { COLUMNS } from '../../read/loops/figures.ts'
import { LOOP_LABELS, pointLabel, standing, worstOfEach } from '../../read/loops/lines.ts'
import { NO_FIGURE } from '../../ui/format.ts'

const SHOWN = COLUMNS.filter(({ id }) => ['crossover', 'phase-margin', 'gain-margin'].includes(id))

interface Props {
  assumed: LoopsResult | undefined
  fitted: LoopsResult | undefined
}

export function MarginChanges({ assumed, fitted }: Props) {
  const both = [assumed, fitted] as const
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="log-scroll" tabIndex={0} aria-label="Margins, as assumed and as fitted">
      <table className="log-values">
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              Margins, worst
            </th>
            <th scope="colgroup" colSpan={SHOWN.length + 1}>
              as assumed
            </th>
            <th scope="colgroup" colSpan={SHOWN.length + 1}>
              as fitted
            </th>
          </tr>
          <tr>
            {both.map((_, side) => (
              <Heads key={side} />
            ))}
          </tr>
        </thead>
        <tbody>
          {!assumed && (
            <tr>
              <th scope="row">Loops</th>
              <td colSpan={2 * SHOWN.length + 2}>…</td>
            </tr>
          )}
          {(assumed ? worstOfEach(assumed) : []).map(({ loop }) => (
            <tr key={loop}>
              <th scope="row">{LOOP_LABELS[loop]} loop</th>
              {both.map((result, side) => (
                <Cells key={side} result={result} loop={loop} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

const Heads = () => (
  <>
    {SHOWN.map(({ id, label, unit, frequency }) => (
      <th key={id} scope="col">
        {label} <FigureUnit unit={unit} frequency={frequency} />
      </th>
    ))}
    <th scope="col">at</th>
  </>
)

function Cells({ result, loop }: { result: LoopsResult | undefined; loop: LoopId }) {
  if (!result) return <td colSpan={SHOWN.length + 1}>…</td>
  const worst = worstOfEach(result).find((each) => each.loop === loop)?.worst
  if (!worst) return <td colSpan={SHOWN.length + 1}>{NO_FIGURE}</td>
  const where = <td>{pointLabel(result, worst.workingPoint).toLowerCase()}</td>
  if (!worst.stable)
    return (
      <>
        <td colSpan={SHOWN.length}>
          <strong>{standing(worst)}</strong>
        </td>
        {where}
      </>
    )
  return (
    <>
      {SHOWN.map((column) => (
        <td key={column.id}>
          <LoopFigure value={column.value(worst)} frequency={column.frequency} />
        </td>
      ))}
      {where}
    </>
  )
}
