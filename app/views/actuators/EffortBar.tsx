import type { AxisReport } from '../../../sim/index.ts'

interface Props {
  report: AxisReport
  /** Efforts between which the work is done [N or N·m]; null: no such edge. */
  window: { least: number | null; most: number | null }
  wanted: number
  /** Effort at the right edge. */
  most: number
}

/** Effort of one axis over its window, on one scale for all rows: continuous, peak, and what friction hides at the wanted one. */
export function EffortBar({ report, window, wanted, most }: Props) {
  const x = (effort: number) => `${(100 * Math.sqrt(Math.min(effort, most) / most)).toFixed(2)}%`
  const span = (from: number, to: number) => ({
    x: x(from),
    width: `${(100 * (Math.sqrt(Math.min(to, most) / most) - Math.sqrt(Math.min(from, most) / most))).toFixed(2)}%`,
  })
  return (
    <svg className="force-bar" aria-hidden="true">
      <rect className="window" y="0" height="100%" {...span(window.least ?? 0, window.most ?? most)} />
      <rect className="peak" y="9" height="6" {...span(0, report.peak)} />
      <rect className="continuous" y="9" height="6" {...span(0, report.continuous)} />
      <rect
        className="hidden-force"
        y="4"
        height="3"
        {...span(Math.max(0, wanted - report.frictionBand), wanted + report.frictionBand)}
      />
      <line className="wanted" x1={x(wanted)} x2={x(wanted)} y1="1" y2="17" />
    </svg>
  )
}
