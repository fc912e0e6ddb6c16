/** What the fitted axis changes: the least margins of the loops and the verdicts of the strategies, as assumed and as fitted. */
import { type LoopsResult, type Scenario, STRATEGIES } from '../../../sim/index.ts'
import { LOOP_LABELS, pointLabel, standing, worstOfEach } from '../../read/loops/lines.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { useStudy } from '../../read/study/useStudy.ts'
import { formatFigure, NO_FIGURE, withUnit } from '../../ui/format.ts'

export function Changes({ before, after }: { before: Scenario; after: Scenario }) {
  const loops = [useStudy('loops', before), useStudy('loops', after)]
  const grips = [useStudy('grips', before), useStudy('grips', after)]
  const [assumed, fitted] = loops.map(({ items }) => items[0])
  const failed = [...loops, ...grips].find(({ status }) => status === 'failed')
  return (
    <section className="log-changes" aria-label="What it changes">
      <h3>What it changes</h3>
      <table className="log-values">
        <thead>
          <tr>
            <th scope="col">Least phase margin, verdict</th>
            <th scope="col">as assumed</th>
            <th scope="col">as fitted</th>
          </tr>
        </thead>
        <tbody>
          {!assumed && (
            <tr>
              <th scope="row">Loops</th>
              <td>…</td>
              <td>…</td>
            </tr>
          )}
          {(assumed ? worstOfEach(assumed) : []).map(({ loop }) => (
            <tr key={loop}>
              <th scope="row">{LOOP_LABELS[loop]} loop</th>
              <td>{marginOf(assumed, loop)}</td>
              <td>{marginOf(fitted, loop)}</td>
            </tr>
          ))}
          {STRATEGIES.map(({ id, label }) => (
            <tr key={id}>
              <th scope="row">{label}</th>
              {grips.map(({ items }, column) => {
                const result = items.find(({ strategy }) => strategy === id)?.result
                return <td key={column}>{result ? <VerdictWord result={result} /> : '…'}</td>
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {failed && <p role="alert">It could not be worked out: {failed.message}</p>}
    </section>
  )
}

/** Of the working point that comes closest to instability. */
function marginOf(result: LoopsResult | undefined, loop: string): string {
  if (!result) return '…'
  const worst = worstOfEach(result).find((each) => each.loop === loop)?.worst
  if (!worst) return NO_FIGURE
  const where = pointLabel(result, worst.workingPoint).toLowerCase()
  if (!worst.stable) return `${standing(worst)}, ${where}`
  return `${withUnit(formatFigure(worst.margins?.phaseMargin ?? null), '°')}, ${where}`
}
