/** Areas of the page as one image, side by side under a head. */
import { CONTROLS, drawArea } from './draw.ts'

/** Image pixels for each page pixel. */
const SCALE = 3
/** Page pixels around each area. */
export const MARGIN = 24

/** `drawHead` draws into the topmost `head` px beneath the margin, on a sheet of a width. Rejects where the browser makes no image. */
export async function sheetOf(
  areas: HTMLElement[],
  head: number,
  drawHead: (pen: CanvasRenderingContext2D, width: number) => void,
): Promise<Blob> {
  const width = areas.reduce((sum, area) => sum + area.scrollWidth + MARGIN, MARGIN)
  const canvas = document.createElement('canvas')
  canvas.width = SCALE * width
  canvas.height = SCALE * (head + 2 * MARGIN + Math.max(...areas.map(endOf)))
  const pen = canvas.getContext('2d')!
  pen.fillStyle = getComputedStyle(document.documentElement).backgroundColor
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.scale(SCALE, SCALE)
  drawHead(pen, width)
  let left = MARGIN
  for (const area of areas) {
    await drawArea(pen, area, left, MARGIN + head)
    left += area.scrollWidth + MARGIN
  }
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no image'))), 'image/png'),
  )
}

/** Where the last thing of an area ends that is drawn [px]. */
function endOf(area: HTMLElement): number {
  const { top } = area.getBoundingClientRect()
  const drawn = [...area.querySelectorAll('svg, canvas, p, dl, table, h2, h3, figcaption')]
  const ends = drawn.filter((each) => !each.closest(CONTROLS)).map((each) => each.getBoundingClientRect().bottom)
  return Math.max(0, ...ends) - top + area.scrollTop
}
