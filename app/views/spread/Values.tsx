/** A measured list: pasted, typed, or dropped as a file of comma-separated values. */
import Papa from 'papaparse'
import { type DragEvent, useId, useState } from 'react'
import { exponentOf, quantityAt, type Scenario, shownUnit, type Varied } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { formatPlain } from '../../ui/format.ts'

/** Most values that a file holds. */
const MOST = 2000

interface ValuesProps {
  varied: Varied
  scenario: Scenario
  change(next: Varied): boolean
}

export function Values({ varied, scenario, change }: ValuesProps) {
  const id = useId()
  const units = useView((state) => state.units)
  const unit = shownUnit(quantityAt(scenario, varied.path)!, units, exponentOf(scenario))
  const values = varied.values ?? []
  const shown = values.map((value) => formatPlain(unit.toShown(value), 6)).join(', ')
  const [text, setText] = useState<string | null>(null)
  const [told, setTold] = useState('')
  const take = (given: string) => {
    const { numbers, strange } = numbersIn(given)
    if (numbers.length === 0) return setTold('There is no number in it.')
    if (numbers.length > MOST) return setTold(`${numbers.length} values; a file holds ${MOST}.`)
    if (!change({ ...varied, values: numbers.map((each) => unit.toSi(each)) })) return setTold('')
    setText(null)
    setTold(strange > 0 ? `${numbers.length} values taken; what is no number was left out (${strange}).` : '')
  }
  const drop = async (event: DragEvent) => {
    const [file] = event.dataTransfer.files
    if (!file) return
    event.preventDefault()
    event.stopPropagation()
    take(await file.text())
  }
  return (
    <div className="measured">
      <label htmlFor={id}>
        {values.length} {values.length === 1 ? 'value' : 'values'} {unit.symbol && `in ${unit.symbol}`}
      </label>
      <textarea
        id={id}
        rows={3}
        value={text ?? shown}
        onChange={({ target }) => setText(target.value)}
        onDrop={drop}
        onDragOver={(event) => event.preventDefault()}
      />
      <Button disabled={text === null} onClick={() => take(text ?? '')}>
        Take the values
      </Button>
      <span className="field-fault" aria-live="polite">
        {told}
      </span>
      <span className="spread-note">Paste a column, or drop a CSV file; each value occurs as often.</span>
    </div>
  )
}

/** Every number in a text of comma-separated values or of lines; a heading is no number. */
function numbersIn(text: string): { numbers: number[]; strange: number } {
  const rows = Papa.parse<string[]>(text.trim(), { skipEmptyLines: true }).data
  const cells = rows
    .flat()
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '')
  const numbers = cells.map(Number).filter(Number.isFinite)
  return { numbers, strange: cells.length - numbers.length }
}
