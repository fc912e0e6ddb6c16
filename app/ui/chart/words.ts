/**
 * Words of charts. To set a font and to write are the dearest part of a chart that moves, so words that were written once are kept as
 * pictures, and widths as figures.
 */

interface Word {
  image: ImageBitmap
  /** From its corner to where it is written [px]. */
  x: number
  y: number
}

/** Words that are kept; with more all are written anew. */
const MOST = 600
/** Room around a word for what stands out of its box [px]. */
const ROOM = 3

export const FONT = '12px "Source Sans 3 Variable", "Source Sans 3", sans-serif'

/** In the canvas' own pixels. */
const fontAt = (ratio: number) => FONT.replace('12px', `${12 * ratio}px`)

const kept = new Map<string, Word>()
const widths = new Map<string, number>()
const keeping = new WeakMap<CanvasRenderingContext2D, () => boolean>()
let watched = false

/**
 * From now on `pen`, whose words are all of the charts' one font, takes them from those that are kept, at whole pixels, while it is
 * `plain`: neither enlarged nor turned. To ask a pen for its font or transform would cost as much as the writing.
 */
export function keepWords(pen: CanvasRenderingContext2D, plain: () => boolean) {
  if (typeof OffscreenCanvas === 'undefined') return
  if (!watched) document.fonts.addEventListener('loadingdone', forget)
  watched = true
  keeping.set(pen, plain)
  const { fillText, strokeText } = CanvasRenderingContext2D.prototype
  pen.fillText = (text, x, y) => (plain() ? put(pen, 'fill', text, x, y) : fillText.call(pen, text, x, y))
  pen.strokeText = (text, x, y) => (plain() ? put(pen, 'stroke', text, x, y) : strokeText.call(pen, text, x, y))
}

function forget() {
  kept.clear()
  widths.clear()
}

/** The charts' font, where the pen writes by itself. */
export function setFont(pen: CanvasRenderingContext2D) {
  if (!keeping.get(pen)?.()) pen.font = fontAt(devicePixelRatio)
}

/** Width of words in the charts' font, in the canvas' own pixels. */
export function widthOf(pen: CanvasRenderingContext2D, text: string): number {
  const key = `${text}|${devicePixelRatio}`
  let width = widths.get(key)
  if (width === undefined) {
    if (widths.size >= MOST) widths.clear()
    pen.font = fontAt(devicePixelRatio)
    width = pen.measureText(text).width
    widths.set(key, width)
  }
  return width
}

function put(pen: CanvasRenderingContext2D, how: 'fill' | 'stroke', text: string, x: number, y: number) {
  const style = how === 'fill' ? pen.fillStyle : pen.strokeStyle
  const key = `${text}|${how}|${style}|${devicePixelRatio}|${pen.textAlign}|${pen.textBaseline}`
  let word = kept.get(key)
  if (!word) {
    if (kept.size >= MOST) kept.clear()
    word = written(pen, how, text)
    kept.set(key, word)
  }
  pen.drawImage(word.image, Math.round(x - word.x), Math.round(y - word.y))
}

function written(pen: CanvasRenderingContext2D, how: 'fill' | 'stroke', text: string): Word {
  pen.font = fontAt(devicePixelRatio)
  const box = pen.measureText(text)
  const rim = ROOM + (how === 'stroke' ? pen.lineWidth / 2 : 0)
  const x = Math.ceil(box.actualBoundingBoxLeft + rim)
  const y = Math.ceil(box.actualBoundingBoxAscent + rim)
  const width = x + Math.ceil(box.actualBoundingBoxRight + rim)
  const height = y + Math.ceil(box.actualBoundingBoxDescent + rim)
  const copy = new OffscreenCanvas(Math.max(1, width), Math.max(1, height)).getContext('2d')!
  const { font, textAlign, textBaseline, lineJoin, lineWidth, fillStyle, strokeStyle } = pen
  Object.assign(copy, { font, textAlign, textBaseline, lineJoin, lineWidth, fillStyle, strokeStyle })
  if (how === 'fill') copy.fillText(text, x, y)
  else copy.strokeText(text, x, y)
  return { image: copy.canvas.transferToImageBitmap(), x, y }
}
