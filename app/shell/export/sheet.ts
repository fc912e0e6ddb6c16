/** The bench as one image: every area marked `data-sheet`, side by side under the scenario's name and force window. */
import { download } from '../../store/file.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { drawArea } from '../../ui/draw.ts'

/** Image pixels for each page pixel, page pixels around each area and for the title. */
const SCALE = 2
const MARGIN = 24
const TITLE = 64

export async function saveSheet(name: string) {
  try {
    download(await sheet(), name)
  } catch {
    useResults.getState().say('The browser could not make the image.')
  }
}

async function sheet(): Promise<Blob> {
  const areas = [...document.querySelectorAll<HTMLElement>('[data-sheet]')].sort(
    (a, b) => a.getBoundingClientRect().left - b.getBoundingClientRect().left,
  )
  const canvas = document.createElement('canvas')
  canvas.width = SCALE * areas.reduce((sum, area) => sum + area.scrollWidth + MARGIN, MARGIN)
  canvas.height = SCALE * (TITLE + 2 * MARGIN + Math.max(...areas.map((area) => area.scrollHeight)))
  const pen = canvas.getContext('2d')!
  const style = getComputedStyle(document.documentElement)
  pen.fillStyle = style.backgroundColor
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.scale(SCALE, SCALE)
  pen.fillStyle = style.color
  pen.font = `600 20px ${style.fontFamily}`
  pen.textBaseline = 'alphabetic'
  pen.fillText(`Jawbench: ${useScenario.getState().scenario.name}`, MARGIN, MARGIN + 16)
  pen.font = `14px ${style.fontFamily}`
  pen.fillText(document.querySelector('.window-line')?.textContent ?? '', MARGIN, MARGIN + 38)
  let left = MARGIN
  for (const area of areas) {
    await drawArea(pen, area, left, MARGIN + TITLE)
    left += area.scrollWidth + MARGIN
  }
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no image'))), 'image/png'),
  )
}
