/** Share {studyWords(job).done} as required over the wanted force: a line a strategy with its band, the best of each marked, and how far it may drift. */
import { JOBS, type JobId, percent, STRATEGIES, type StrategyId, shownUnit, studyWords } from '../../../sim/index.ts'
import { marksUpTo } from '../../read/spread/marks.ts'
import { useView } from '../../store/view.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { useWidth } from '../../ui/useWidth.ts'
import type { Bests } from './BestForce.tsx'

/** px: the plot, a row of drift beneath it, the axis, and room for figures and names. */
const HEIGHT = 150
const TOP = 8
const ROW = 14
const AXIS = 22
const LEFT = 44
const RIGHT = 12

export function BestCurves({ job, bests }: { job: JobId; bests: Bests }) {
  const [box, width] = useWidth<HTMLDivElement>()
  const units = useView((state) => state.units)
  const unit = shownUnit({ unit: JOBS[job].output.effort }, units)
  const shown = STRATEGIES.filter(({ id }) => bests[id])
  const settings = shown.flatMap(({ id }) => bests[id]!.best.curve.map(({ setting }) => setting))
  const to = Math.max(1e-9, ...settings)
  const room = Math.max(1, width - LEFT - RIGHT)
  const x = (setting: number) => LEFT + (room * setting) / to
  const y = (share: number) => TOP + HEIGHT * (1 - share)
  const bottom = TOP + HEIGHT + 8 + shown.length * ROW
  const force = (newtons: number) => withUnit(formatPlain(unit.toShown(newtons), 3), unit.symbol)
  const spoken = shown.map(
    ({ id, label }) =>
      `${label}: ${bests[id]!.best.curve.map((point) => `${force(point.setting)} ${percent(point.share)}`).join(', ')}.`,
  )
  return (
    <figure className="best-curves" ref={box}>
      <figcaption>
        Share {studyWords(job).done} as required over the wanted force; pale: 95 % limits; bars: how far the best may
        drift
      </figcaption>
      <svg className="best-plot" width={width} height={bottom + AXIS} role="img" aria-label={spoken.join(' ')}>
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <path className="best-rule" d={`M${LEFT} ${y(share)}h${room}`} />
            <text x={LEFT - 6} y={y(share) + 4} textAnchor="end">
              {100 * share} %
            </text>
          </g>
        ))}
        {marksUpTo(unit.toShown(to), room / 80).map((mark) => (
          <text key={mark} x={x(unit.toSi(mark))} y={bottom + 15} textAnchor="middle">
            {formatPlain(mark, 3)}
          </text>
        ))}
        <text x={width - RIGHT} y={bottom + 15} textAnchor="end" className="best-unit">
          {unit.symbol}
        </text>
        {shown.map(({ id, look }, row) => (
          <Curve key={id} {...{ id, bests, x, y }} dash={look.dash} rowAt={TOP + HEIGHT + 8 + row * ROW + ROW / 2} />
        ))}
      </svg>
    </figure>
  )
}

interface CurveProps {
  id: StrategyId
  bests: Bests
  x(setting: number): number
  y(share: number): number
  dash: readonly number[]
  /** Middle of the row of its drift. */
  rowAt: number
}

function Curve({ id, bests, x, y, dash, rowAt }: CurveProps) {
  const { best } = bests[id]!
  const { curve, drift } = best
  const line = (pick: (point: (typeof curve)[number]) => number, points = curve) =>
    points.map((point) => `${x(point.setting).toFixed(1)} ${y(pick(point)).toFixed(1)}`).join('L')
  const colour = `var(--strategy-${id})`
  return (
    <g>
      <path
        className="best-band"
        style={{ fill: colour }}
        d={`M${line(({ low }) => low)}L${line(({ high }) => high, curve.toReversed())}Z`}
      />
      <path
        className="best-line"
        style={{ stroke: colour, strokeDasharray: dash.join(' ') }}
        d={`M${line(({ share }) => share)}`}
      />
      {best.share > 0 && (
        <>
          <path className="best-drop" style={{ stroke: colour }} d={`M${x(best.setting)} ${y(best.share)}V${rowAt}`} />
          <path className="best-drift" style={{ stroke: colour }} d={`M${x(drift.low)} ${rowAt}H${x(drift.high)}`} />
          <circle cx={x(best.setting)} cy={y(best.share)} r={5} style={{ stroke: colour }} />
          <circle cx={x(best.setting)} cy={rowAt} r={4} style={{ stroke: colour }} />
        </>
      )}
    </g>
  )
}
