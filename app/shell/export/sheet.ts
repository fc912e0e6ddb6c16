/** The bench as one image: every area marked `data-sheet`, side by side under what the job is, what the lines mean, and the date. */
import { STRATEGIES } from '../../../sim/index.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { today } from '../../read/today.ts'
import { besideOf } from '../../store/beside.ts'
import { download } from '../../store/file.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { MARGIN, sheetOf } from '../../ui/sheet.ts'
import { cssColour } from '../../ui/theme.ts'
import { VERSION } from '../../version.ts'

/** Lines of the title [px], from its top: name, window, axes, legend; and where the areas begin. */
const LINES = { name: 18, window: 40, axes: 62, legend: 86, end: 108 }
/** Length of a line of the legend and distance between two names [px]. */
const SAMPLE = 34
const APART = 28

export async function saveSheet(name: string) {
  try {
    download(await sheet(), name)
  } catch {
    useResults.getState().say('The browser could not make the image.')
  }
}

function sheet(): Promise<Blob> {
  const areas = [...document.querySelectorAll<HTMLElement>('[data-sheet]')].sort(
    (a, b) => a.getBoundingClientRect().left - b.getBoundingClientRect().left,
  )
  return sheetOf(areas, LINES.end, drawTitle)
}

function drawTitle(pen: CanvasRenderingContext2D, width: number) {
  const { fontFamily } = getComputedStyle(document.documentElement)
  const { scenario } = useScenario.getState()
  const write = (text: string, y: number, font = '14px', colour = 'var(--ink)') => {
    pen.font = `${font} ${fontFamily}`
    pen.fillStyle = cssColour(colour)
    pen.fillText(text, pen.textAlign === 'right' ? width - MARGIN : MARGIN, MARGIN + y)
  }
  pen.textBaseline = 'alphabetic'
  write(scenario.name, LINES.name, '600 20px')
  write(document.querySelector('.window-line')?.textContent ?? '', LINES.window)
  write(axesWords(), LINES.axes, '14px', 'var(--ink-2)')
  pen.textAlign = 'right'
  write('Simulated, not measured', LINES.name, '600 14px')
  write(`${today()} · Jawbench ${VERSION}`, LINES.window, '14px', 'var(--ink-2)')
  pen.textAlign = 'left'
  drawLegend(pen, fontFamily)
}

function axesWords(): string {
  const standing = useScenario.getState()
  const second = besideOf(standing)
  const own = `Axis: ${axisTitle(standing.scenario)}`
  const both = second?.fitted.ok ? `${own}; with rings ○, beside it: ${second.axis.title}` : own
  const at = withUnit(formatFigure(useView.getState().time, 4), 's')
  if (standing.scenario.job === 'press') return `${both}. Press at ${at}, force over depth.`
  if (standing.scenario.job === 'web') return `${both}. Web at ${at}, tension over time.`
  return `${both}. Grippers at ${at}, traces over time.`
}

/** What is shown as its lines are drawn, on either axis. */
function drawLegend(pen: CanvasRenderingContext2D, family: string) {
  const { shown } = useView.getState()
  const axes = besideOf(useScenario.getState())?.fitted.ok ? [false, true] : [false]
  const y = MARGIN + LINES.legend
  let x = MARGIN
  pen.textBaseline = 'middle'
  pen.font = `600 13px ${family}`
  for (const beside of axes)
    for (const { id, label, look } of STRATEGIES.filter((each) => shown.includes(each.id))) {
      pen.strokeStyle = cssColour(`var(--strategy-${id})`)
      pen.lineWidth = beside ? 1.25 : 1.75
      pen.setLineDash([...look.dash])
      pen.beginPath()
      pen.moveTo(x, y)
      pen.lineTo(x + SAMPLE, y)
      pen.stroke()
      pen.setLineDash([])
      if (beside) drawRing(pen, x + SAMPLE / 2, y)
      pen.fillStyle = cssColour(`var(--strategy-${id}-text)`)
      const words = beside ? `○ ${label}` : label
      pen.fillText(words, x + SAMPLE + 8, y)
      x += SAMPLE + 8 + pen.measureText(words).width + APART
    }
}

function drawRing(pen: CanvasRenderingContext2D, x: number, y: number) {
  pen.beginPath()
  pen.arc(x, y, 4, 0, 2 * Math.PI)
  pen.fillStyle = cssColour('var(--surface)')
  pen.fill()
  pen.stroke()
}
