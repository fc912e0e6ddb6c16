/** The read-out of a group of charts: every line at one cursor or at two, and the difference. */
import type { ChartGroup } from './group.ts'

export interface ReadingRow {
  chart: string
  unit: string
  line: string
  /** At the cursor, at the second one, and the second less the first; null: nothing is there. */
  values: (number | null)[]
}

export interface GroupReading {
  axis: string
  /** Heads of the columns. */
  heads: string[]
  rows: ReadingRow[]
}

/** Null where there is no cursor to read at. */
export function readingOf({ surfaces, use }: ChartGroup): GroupReading | null {
  const { mark, cursor } = use.getState()
  const axis = surfaces[0]?.axis
  if (!axis || cursor === null) return null
  const rows = surfaces.flatMap((surface) => {
    const { title, unit, lines } = surface.read()
    return lines.map(({ label, at }): ReadingRow => {
      const first = at(cursor)
      if (mark === null) return { chart: title, unit, line: label, values: [first] }
      const second = at(mark)
      const difference = first === null || second === null ? null : second - first
      return { chart: title, unit, line: label, values: [first, second, difference] }
    })
  })
  const heads = [axis.figure(cursor)]
  if (mark !== null) heads.push(axis.figure(mark), axis.difference(cursor, mark))
  return { axis: axis.title, heads, rows }
}

/** As text with tabs, which a sheet takes as a table. */
export function readingText({ axis, heads, rows }: GroupReading): string {
  const figure = (value: number | null) => (value === null ? '' : String(Number(value.toPrecision(6))))
  const lines = [
    [axis, '', '', ...heads],
    ...rows.map(({ chart, unit, line, values }) => [chart, line, unit, ...values.map(figure)]),
  ]
  return lines.map((cells) => cells.join('\t')).join('\n')
}

/** Puts the read-out on the clipboard. Whether the browser let it. */
export async function copyReading(group: ChartGroup): Promise<boolean> {
  const reading = readingOf(group)
  if (!reading) return false
  let copied = true
  try {
    await navigator.clipboard.writeText(readingText(reading))
  } catch {
    copied = false
  }
  group.use.setState({ told: copied ? 'Read-out copied.' : 'The browser did not let it be copied.' })
  return copied
}
