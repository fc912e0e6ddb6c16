/** How one log is understood: layout, time, recordings, what stands out and what was left out. */
import {
  clockText,
  formatPlain,
  grouped,
  layoutText,
  logRemarkText,
  skipText,
  type Wording,
  withUnit,
  wordingOf,
} from '../../../sim/index.ts'
import { useLog } from '../../store/log.ts'
import { choicesOf, FEWEST, keyOf, type OpenLog } from '../../store/log-state.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { parseNumber } from '../../ui/number.ts'
import type { ResponseTable } from '../../worker/log-messages.ts'
import { Columns } from './Columns.tsx'
import { Entry } from './Entry.tsx'

export function Understood({ log }: { log: OpenLog }) {
  const words = wordingOf(useView((state) => state.units))
  const { told } = log
  if (told?.response) return <p>{tableText(told.response, words)}</p>
  if (!told || told.columns.length === 0) return null
  return (
    <>
      <Columns log={log} />
      <div className="log-clock">
        <p>
          {told.clock ? `Time: ${clockText(told.clock, words)}.` : 'Time is not known yet.'}{' '}
          {told.layout && <span className="log-note">{layoutText(told.layout)}.</span>}
        </p>
        <Rate log={log} />
      </div>
      <Recordings log={log} />
      {told.remarks.length > 0 && (
        <ul className="log-remarks" aria-label="What stands out">
          {told.remarks.map((remark) => (
            <li key={JSON.stringify(remark)}>{logRemarkText(remark, words, 'page')}</li>
          ))}
        </ul>
      )}
      <LeftOut log={log} />
    </>
  )
}

/** How a table over frequency is understood. */
function tableText({ rows, from, to, coherence }: ResponseTable, words: Wording): string {
  if (rows === 0) return 'A frequency response, without a row that has a frequency, a magnitude and a phase.'
  return `A frequency response: ${grouped(rows)} frequencies from ${words.swing(from)} to ${words.swing(to)}, ${coherence ? 'with' : 'without'} coherence.`
}

function Rate({ log }: { log: OpenLog }) {
  const rate = useScenario(({ logs }) => choicesOf(logs, log.id).rate)
  const setRate = useLog((state) => state.setRate)
  return (
    <Entry
      label="Rows per second"
      placeholder="by a column"
      value={rate === undefined ? '' : formatPlain(rate, 9)}
      onTake={(text) => {
        if (text.trim() === '') {
          setRate(log.id, null)
          return ''
        }
        const found = parseNumber(text, 'Hz')
        if (!found.ok) return found.why
        if (!(found.value > 0)) return 'It must be above 0'
        setRate(log.id, found.value)
        return ''
      }}
    />
  )
}

function Recordings({ log }: { log: OpenLog }) {
  const leftOut = useScenario(({ logs }) => logs.leftOut)
  const leave = useLog((state) => state.leaveOut)
  const recordings = log.told?.recordings ?? []
  return (
    <fieldset className="log-recordings">
      <legend>{recordings.length === 1 ? 'Recording' : `${recordings.length} recordings`}</legend>
      {recordings.map(({ rows, line, lastLine, from, to, step, gaps, longest, repeated }, at) => {
        const own = { log: log.id, recording: at }
        const short = rows < FEWEST
        return (
          <label key={line}>
            <input
              type="checkbox"
              disabled={short}
              checked={!short && !leftOut.includes(keyOf(own))}
              onChange={(event) => leave(own, !event.target.checked)}
            />{' '}
            {grouped(rows)} rows, lines {grouped(line)} to {grouped(lastLine)}, {seconds(from)} to {seconds(to)}, a row
            each {withUnit(formatPlain(1e3 * step, 4), 'ms')}
            {gaps > 0 && `, ${gaps === 1 ? 'a gap' : `${gaps} gaps, the longest`} of ${seconds(longest)}`}
            {repeated > 0 && `, ${grouped(repeated)} left out that repeat a time`}
            {short && `, too few rows to tell anything (at least ${FEWEST})`}
          </label>
        )
      })}
    </fieldset>
  )
}

const seconds = (time: number) => withUnit(formatPlain(time, 6), 's')

/** Lines that are listed. */
const LISTED = 100

function LeftOut({ log }: { log: OpenLog }) {
  const { skipped, skippedMore } = log.told!
  if (skipped.length === 0) return null
  const lines = (of: typeof skipped) => of.reduce((sum, { row, lastRow }) => sum + lastRow - row + 1, 0)
  const more = lines(skipped.slice(LISTED)) + skippedMore
  return (
    <details className="log-skipped">
      <summary>{grouped(lines(skipped) + skippedMore)} lines were left out</summary>
      <ul>
        {skipped.slice(0, LISTED).map(({ row, lastRow, why }) => (
          <li key={row}>
            {row === lastRow ? `Line ${grouped(row)}` : `Lines ${grouped(row)} to ${grouped(lastRow)}`}: {skipText(why)}
          </li>
        ))}
        {more > 0 && <li>and {grouped(more)} lines more</li>}
      </ul>
    </details>
  )
}
