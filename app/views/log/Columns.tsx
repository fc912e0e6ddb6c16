/** Every column of a log: what it is taken for and why, on the data itself; whatever is changed is understood anew at once. */
import { memo } from 'react'
import { type Column, type ColumnChoice, columnReason } from '../../../sim/index.ts'
import { useLog } from '../../store/log.ts'
import { choicesOf, type OpenLog } from '../../store/log-state.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { formatPlain } from '../../ui/format.ts'
import { parseNumber } from '../../ui/number.ts'
import { Entry } from './Entry.tsx'
import { columnName, columnText, HELD, type Held, headingOf } from './words.ts'

export function Columns({ log }: { log: OpenLog }) {
  const choices = useScenario(({ logs }) => choicesOf(logs, log.id))
  const { told, sketches } = log
  if (!told) return null
  const clock = told.clock?.kind === 'column' ? told.clock.column : null
  return (
    <ul className="log-columns" aria-label={`Columns of ${log.name}`}>
      {told.columns.map((column) => (
        <li key={column.place}>
          <ColumnRow
            id={log.id}
            column={column}
            choice={choices.columns?.find(({ header }) => header === `#${column.place}`) ?? null}
            time={column.channel === null && clock === (column.header || `#${column.place}`)}
            sketch={sketches[column.place - 1] ?? NOTHING}
          />
        </li>
      ))}
    </ul>
  )
}

const NOTHING = new Float64Array(0)

interface Props {
  id: number
  column: Column
  choice: ColumnChoice | null
  /** It is the time. */
  time: boolean
  sketch: Float64Array
}

function ColumnRow({ id, column, choice, time, sketch }: Props) {
  const units = useView((state) => state.units)
  const choose = useLog((state) => state.choose)
  const name = columnName(column)
  const guessed: ColumnChoice['channel'] = time ? 'time' : column.channel
  const held: Held = (choice ? choice.channel : guessed) ?? 'nothing'
  const sign = (choice?.scale ?? 1) < 0
  const put = (next: Partial<ColumnChoice>) =>
    choose(id, column.place, { header: '', channel: guessed, ...choice, ...next })
  return (
    <fieldset className="log-column" data-used={held !== 'nothing'}>
      <legend>{name}</legend>
      <Sketch values={sketch} turned={sign} />
      <span className="log-range">
        {column.words ? (
          column.words.join(', ')
        ) : (
          <>
            {columnText(column, column.least, units)} to {columnText(column, column.most, units)}
          </>
        )}
      </span>
      <Pick
        label={`What ${name} holds`}
        bare
        options={HELD}
        heading={headingOf}
        value={held}
        onChoose={(next) => put({ channel: next === 'nothing' ? null : next })}
      />
      {held !== 'nothing' && (
        <Entry
          label="Unit"
          value={choice?.unit ?? column.unit}
          onTake={(unit) => {
            const { unit: _, ...rest } = { header: '', channel: guessed, ...choice }
            choose(id, column.place, unit.trim() === '' ? rest : { ...rest, unit: unit.trim() })
            return ''
          }}
        />
      )}
      {held !== 'nothing' && held !== 'time' && <Scaling column={column} choice={choice} put={put} />}
      <span className="log-reason">
        {columnReason(column)}
        {choice && (
          <Button quiet onClick={() => choose(id, column.place, null)} aria-label={`${name}: as guessed`}>
            as guessed
          </Button>
        )}
      </span>
    </fieldset>
  )
}

interface ScalingProps {
  column: Column
  choice: ColumnChoice | null
  put(next: Partial<ColumnChoice>): void
}

function Scaling({ column, choice, put }: ScalingProps) {
  const scale = choice?.scale ?? (column.scale === null ? null : 1)
  const offset = choice?.offset ?? 0
  return (
    <>
      <Entry
        label="Scale"
        placeholder="not known"
        value={scale === null ? '' : formatPlain(scale, 9)}
        onTake={(text) => {
          const found = fractionOf(text)
          if (!found.ok) return found.why
          put({ scale: found.value })
          return ''
        }}
      />
      <Button
        pressed={(scale ?? 1) < 0}
        disabled={scale === null}
        onClick={() => put({ scale: -(scale ?? 1) })}
        aria-label={`Turn the sign of ${columnName(column)}`}
      >
        ±
      </Button>
      <Entry
        label={`Offset ${column.si && `[${column.si}]`}`}
        value={formatPlain(offset, 9)}
        onTake={(text) => {
          const found = parseNumber(text, column.si)
          if (!found.ok) return found.why
          put({ offset: found.value })
          return ''
        }}
      />
    </>
  )
}

/** "0.005/4096" is a scale as good as its quotient. */
function fractionOf(text: string) {
  const [above = '', below, ...more] = text.split('/')
  const top = parseNumber(above)
  const foot = below === undefined ? null : parseNumber(below)
  if (!top.ok) return top
  if (foot && !foot.ok) return foot
  const value = top.value / (foot?.value ?? 1)
  if (more.length > 0 || !Number.isFinite(value) || value === 0)
    return { ok: false as const, why: `“${text.trim()}” is no scale` }
  return { ok: true as const, value }
}

/** px of the picture. */
const WIDTH = 120
const HEIGHT = 28

/** The data, from left to right; it says nothing that range and reason do not. */
const Sketch = memo(function Sketch({ values, turned }: { values: Float64Array; turned: boolean }) {
  const known = values.filter(Number.isFinite)
  const [low, high] = [
    known.reduce((a, b) => Math.min(a, b), Infinity),
    known.reduce((a, b) => Math.max(a, b), -Infinity),
  ]
  const span = high - low || 1
  const y = (value: number) => 2 + (HEIGHT - 4) * (turned ? (value - low) / span : (high - value) / span)
  const points = [...values].flatMap((value, at) =>
    Number.isFinite(value)
      ? `${((WIDTH * at) / Math.max(1, values.length - 1)).toFixed(1)} ${y(value).toFixed(1)}`
      : [],
  )
  return (
    <svg className="log-sketch" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      {points.length > 1 && <path d={`M${points.join('L')}`} />}
    </svg>
  )
})
