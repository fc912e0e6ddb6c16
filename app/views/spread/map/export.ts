/** A map as files: its grips as a table, and what is drawn as a picture. */
import Papa from 'papaparse'
import { classOf, jobOf, quantityAt } from '../../../../sim/index.ts'
import { nameOf } from '../../../read/spread/name.ts'
import { today } from '../../../read/today.ts'
import { download, fileName } from '../../../store/file.ts'
import { useResults } from '../../../store/results.ts'
import { MARGIN, sheetOf } from '../../../ui/sheet.ts'
import { cssColour } from '../../../ui/theme.ts'
import { VERSION } from '../../../version.ts'
import { labelOf } from '../Ask.tsx'
import type { MapAnswer, Shaded } from './state.ts'

const fileOf = ({ scenario, strategy }: MapAnswer, end: string) => `${fileName(scenario.name)}-map-${strategy}.${end}`

const withUnit = (name: string, unit: string) => (unit === '' ? name : `${name} [${unit}]`)

/** RFC 4180, one header row with units, SI; a row a grip of the grid, an empty cell where there is no figure. */
export function mapCsv({ scenario, x, y, grid }: MapAnswer): string {
  const metrics = jobOf(scenario).figures.filter(({ id }) => id !== 'stepError')
  const fields = [
    ...[x, y].map(({ path }) => withUnit(path, quantityAt(scenario, path)!.unit)),
    'verdict',
    ...metrics.map(({ id, unit }) => withUnit(id, unit)),
  ]
  const data = grid.outcomes.flatMap((outcome, at) => {
    if (!outcome) return []
    const place = [grid.xs[at % grid.xs.length], grid.ys[Math.floor(at / grid.xs.length)]]
    return [
      [...place, classOf(scenario.job, outcome), ...outcome.figures.map((value) => (Number.isNaN(value) ? '' : value))],
    ]
  })
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`
}

export const saveMapCsv = (answer: MapAnswer) =>
  download(new Blob([mapCsv(answer)], { type: 'text/csv' }), fileOf(answer, 'csv'))

/** Lines of the head [px], and where it ends. */
const LINES = { name: 18, what: 40, end: 58 }

export async function saveMapPicture(answer: MapAnswer, shaded: Shaded): Promise<void> {
  const area = document.querySelector<HTMLElement>('.map-figure')
  if (!area) return
  try {
    const head = (pen: CanvasRenderingContext2D, width: number) => drawHead(pen, width, answer, shaded)
    download(await sheetOf([area], LINES.end, head), fileOf(answer, 'png'))
  } catch {
    useResults.getState().say('The browser could not make the image.')
  }
}

function drawHead(pen: CanvasRenderingContext2D, width: number, answer: MapAnswer, shaded: Shaded): void {
  const { fontFamily } = getComputedStyle(document.documentElement)
  const write = (text: string, y: number, font: string, right = false) => {
    pen.font = `${font} ${fontFamily}`
    pen.fillStyle = cssColour('var(--ink)')
    pen.textAlign = right ? 'right' : 'left'
    pen.fillText(text, right ? width - MARGIN : MARGIN, MARGIN + y)
  }
  const { scenario, strategy, x, y } = answer
  const shade =
    shaded === 'spare'
      ? 'nearest margin'
      : jobOf(scenario)
          .figures.find(({ id }) => id === shaded)
          ?.label.toLowerCase()
  const over = `${labelOf(strategy)} over ${nameOf(scenario, x.path)} and ${nameOf(scenario, y.path)}`
  write(scenario.name, LINES.name, '600 20px')
  write(shade ? `${over}; shade and lines: ${shade}` : over, LINES.what, '14px')
  write('Simulated, not measured', LINES.name, '600 14px', true)
  write(`${today()} · Jawbench ${VERSION}`, LINES.what, '14px', true)
  pen.textAlign = 'left'
}
