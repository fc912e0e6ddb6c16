import { type LoopAnalysis, type LoopsResult, loopNote, wordingOf } from '../../../sim/index.ts'
import { FigureUnit, LoopFigure } from '../../read/loops/Figure.tsx'
import { COLUMNS, whyAbsent } from '../../read/loops/figures.ts'
import { pointLabel, standing } from '../../read/loops/lines.ts'
import { useView } from '../../store/view.ts'

interface Props {
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

/** The figures of one loop at all working points, and beneath them what they do not say by themselves. */
export function MarginTable({ result, analyses, worst }: Props) {
  const words = wordingOf(useView((state) => state.units))
  const reasons = analyses.flatMap((each) => {
    const note = loopNote(each, words)
    const absent = note === '' ? COLUMNS.map((column) => whyAbsent(column, each)) : []
    const text = [note, ...new Set(absent)].filter((line) => line !== '').join(' ')
    return text === '' ? [] : [{ id: each.workingPoint, text }]
  })
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="loops-scroll" tabIndex={0} aria-label="Figures at the working points">
        <table className="loops-table">
          <thead>
            <tr>
              <th scope="col">Working point</th>
              <th scope="col">Stable</th>
              {COLUMNS.map(({ id, label, unit, frequency, note }) => (
                <th key={id} scope="col" className="figure" title={note}>
                  {label} <FigureUnit unit={unit} frequency={frequency} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {analyses.map((each) => (
              <tr key={each.workingPoint} data-worst={each === worst}>
                <th scope="row">
                  {pointLabel(result, each.workingPoint)}
                  {each === worst && <span className="worst-word"> worst</span>}
                </th>
                <td>{each.stable ? 'yes' : <strong>{standing(each)}</strong>}</td>
                {COLUMNS.map((column) => {
                  const why = whyAbsent(column, each)
                  return (
                    <td key={column.id} className="figure" title={why || undefined}>
                      <LoopFigure value={column.value(each)} frequency={column.frequency} />
                      {why && <span className="sr-only"> {why}</span>}
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {reasons.length > 0 && (
        <dl className="loops-notes">
          {reasons.map(({ id, text }) => (
            <div key={id}>
              <dt>{pointLabel(result, id)}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  )
}
