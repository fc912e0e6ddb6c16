import { useMemo } from 'react'
import type { Complex, LoopAnalysis, LoopsResult } from '../../../sim/index.ts'
import { frequencyText } from '../../read/loops/frequency.ts'
import { pointLabel } from '../../read/loops/lines.ts'
import { formatFigure } from '../../ui/format.ts'

/** The closed poles of every working point as natural frequency and damping, folded away. */
export function Poles({ result, analyses }: { result: LoopsResult; analyses: LoopAnalysis[] }) {
  const rows = useMemo(
    () => analyses.map((each) => ({ ...each, modes: modesOf(each.poles, each.polePeriod) })),
    [analyses],
  )
  return (
    <details className="loops-poles">
      <summary>Closed poles</summary>
      <p className="loops-small">Natural frequency and damping ratio ζ; the slowest first.</p>
      <dl className="loops-notes">
        {rows.map(({ workingPoint, modes }) => (
          <div key={workingPoint}>
            <dt>{pointLabel(result, workingPoint)}</dt>
            <dd>
              {modes
                .map(({ frequency, damping }) => `${frequencyText(frequency)}, ζ ${formatFigure(damping, 2)}`)
                .join('; ')}
            </dd>
          </div>
        ))}
      </dl>
    </details>
  )
}

/** ln(z)/T of each pole, a pair of conjugates once; poles at z = 0 have no frequency and are left out. */
export function modesOf(poles: Complex[], period: number): { frequency: number; damping: number }[] {
  return poles
    .filter(({ re, im }) => im >= 0 && Math.hypot(re, im) > 1e-12)
    .map(({ re, im }) => {
      const real = Math.log(Math.hypot(re, im)) / period
      const frequency = Math.hypot(real, Math.atan2(im, re) / period)
      return { frequency, damping: frequency > 0 ? -real / frequency : 1 }
    })
    .sort((a, b) => a.frequency - b.frequency)
}
