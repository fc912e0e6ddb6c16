import { type Cause, jobOf, type Why, whyFigure } from '../../../sim/index.ts'
import { formatFigure, NO_FIGURE } from '../../ui/format.ts'
import { shownUnit, type UnitSystem } from '../units.ts'
import './whyChart.css'

/** A bound farther off than this many times the longest bar is told in the table only. */
const FAR = 1.4

/**
 * What made a force, as bars that begin where the one before ends, so that they add up to the figure; the table says the same in
 * numbers. Nothing where there was no force to take apart.
 */
export function WhyChart({ why, units }: { why: Why; units: UnitSystem }) {
  if (why.force === null) return null
  const { effort } = jobOf(why).output
  const force = shownUnit({ unit: effort }, units)
  const say = (newtons: number) => formatFigure(force.toShown(newtons))
  const signed = (newtons: number) => `${newtons > 0 ? '+' : ''}${say(newtons)}`
  const percent = (share: number | null) => (share === null ? '' : `${formatFigure(100 * share, 2)} %`)
  const { bars, scale, bound } = layoutOf(why)
  const called = whyFigure(why)
  return (
    <table className="why-chart">
      <caption className="sr-only">
        {called.whole} of {say(why.force)} {force.symbol}, cause by cause
      </caption>
      <thead>
        <tr>
          <th scope="col">Cause</th>
          <td aria-hidden="true" />
          <th scope="col">
            {effort === 'N' ? 'Force' : 'Torque'} <span className="unit">{force.symbol}</span>
          </th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {bars.map(({ cause, from, to, kind }) => (
          <tr key={cause.cause}>
            <th scope="row">
              {cause.label}
              <Range cause={cause} say={signed} />
            </th>
            <Bar {...{ scale, from, to, kind, bound }} />
            <td>{kind === 'setting' ? say(cause.force) : signed(cause.force)}</td>
            <td>{percent(cause.share)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{called.whole}</th>
          <Bar scale={scale} from={0} to={why.force} kind="whole" bound={bound} />
          <td>{say(why.force)}</td>
          <td>{why.force > 0 ? '100 %' : ''}</td>
        </tr>
        {why.bound !== null && (
          <tr className="why-bound">
            <th scope="row">{called.bound}</th>
            <td aria-hidden="true" />
            <td>{say(why.bound)}</td>
            <td />
          </tr>
        )}
      </tfoot>
    </table>
  )
}

/** What a cause changes if it alone is taken away, and as the last; how sure the force is where orders were drawn. */
function Range({ cause: { alone, last, error }, say }: { cause: Cause; say(newtons: number): string }) {
  if (alone === null && last === null) return null
  const text = (newtons: number | null) => (newtons === null ? NO_FIGURE : say(newtons))
  const spread = error === null ? '' : `, ± ${say(error).replace('+', '')}`
  return (
    <span className="why-range">
      {' '}
      alone {text(alone)}, last {text(last)}
      {spread}
    </span>
  )
}

/** Each cause's bar from the end of the one before [N], the scale of all, and the bound where it lies near enough to be drawn. */
function layoutOf(why: Why) {
  let at = 0
  const bars = why.causes.map((cause, n) => {
    const from = at
    at += cause.force
    const kind: Kind = n === 0 ? 'setting' : at < from ? 'less' : 'more'
    return { cause, from, to: at, kind }
  })
  const ends = bars.flatMap(({ from, to }) => [from, to])
  const bound = why.bound !== null && why.bound < FAR * Math.max(...ends) ? why.bound : null
  return { bars, bound, scale: scaleOf(Math.min(0, ...ends), Math.max(...ends, bound ?? 0)) }
}

type Kind = 'setting' | 'more' | 'less' | 'whole'

type Scale = (newtons: number) => number

/** Newtons to per cent of the width. */
const scaleOf = (low: number, high: number): Scale => {
  const span = high - low || 1
  return (newtons) => (100 * (newtons - low)) / span
}

interface BarProps {
  scale: Scale
  from: number
  to: number
  kind: Kind
  bound: number | null
}

function Bar({ scale, from, to, kind, bound }: BarProps) {
  const left = scale(Math.min(from, to))
  const width = Math.max(0.6, Math.abs(scale(to) - scale(from)))
  return (
    <td className="why-bar" aria-hidden="true">
      <svg width="100%" height="14" aria-hidden="true">
        <line className="zero" x1={`${scale(0)}%`} x2={`${scale(0)}%`} y2="14" />
        <rect className={kind} x={`${left}%`} y="2" width={`${width}%`} height="10" />
        {bound !== null && <line className="bound" x1={`${scale(bound)}%`} x2={`${scale(bound)}%`} y2="14" />}
      </svg>
    </td>
  )
}
