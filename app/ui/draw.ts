/** Draws a part of the page on a canvas: its drawings, its charts and its words, each where it stands. */
import { fineOf } from './fine.ts'

/** What only serves to operate the page, is folded away, or says nothing in a picture. */
export const CONTROLS =
  '[data-no-sheet], button:not(.noted > button), [role="tooltip"], fieldset, label, select, input, summary, details:not([open]), .sr-only, [hidden]'

/** Properties that style sheets may set on a drawing; an image of it does not see the page's style sheets. */
const DRAWN = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-dashoffset',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'display',
  'visibility',
  'vector-effect',
]

/** Attributes on which those properties hang; what moves an element is left to its own attributes. */
const SET_BY = ['class', 'style', 'data-strategy', 'fill', 'stroke-width', 'stroke-dasharray', 'opacity']

/** Styles that were worked out for elements of drawings: an area that is drawn again and again keeps them. */
export class Styles {
  readonly #known = new WeakMap<Element, { key: string; name: string }>()
  readonly #names = new Map<string, string>()

  /** Name of the class that has the element's style. */
  of(element: SVGElement): string {
    const key = SET_BY.map((name) => element.getAttribute(name)).join('|')
    const before = this.#known.get(element)
    if (before?.key === key) return before.name
    const computed = getComputedStyle(element)
    const style = DRAWN.map((property) => `${property}:${computed.getPropertyValue(property)}`).join(';')
    const name = this.#names.get(style) ?? `s${this.#names.size}`
    this.#names.set(style, name)
    this.#known.set(element, { key, name })
    return name
  }

  get sheet(): string {
    return [...this.#names].map(([style, name]) => `.${name}{${style}}`).join('')
  }
}

export async function drawArea(
  pen: CanvasRenderingContext2D,
  area: HTMLElement,
  left: number,
  top: number,
  styles = new Styles(),
) {
  const frame = area.getBoundingClientRect()
  const place = (box: DOMRect) => ({
    x: box.left - frame.left + area.scrollLeft + left,
    y: box.top - frame.top + area.scrollTop + top,
  })
  const sheet = new Sheet()
  for (const item of area.querySelectorAll<SVGSVGElement | HTMLCanvasElement>('svg, canvas')) {
    if (item.closest(CONTROLS) || item.parentElement?.closest('svg')) continue
    const box = item.getBoundingClientRect()
    if (box.width === 0 || box.height === 0) continue
    const { x, y } = place(box)
    if (item instanceof SVGSVGElement) sheet.add(item, { x, y, width: box.width, height: box.height }, styles)
    else pen.drawImage(fineOf(item, pen.getTransform().a), x, y, box.width, box.height)
  }
  const { width, height } = sheet
  if (width > 0) pen.drawImage(await sheet.image(styles), 0, 0, width, height)
  for (const item of area.querySelectorAll<HTMLElement>('[data-strategy]')) {
    const { x, y } = place(item.getBoundingClientRect())
    drawTopEdge(pen, item, x, y)
  }
  const texts = document.createTreeWalker(area, NodeFilter.SHOW_TEXT)
  while (texts.nextNode()) drawWords(pen, texts.currentNode as Text, place)
}

/** The line on top of what belongs to a strategy, in the style of the strategy. */
function drawTopEdge(pen: CanvasRenderingContext2D, item: HTMLElement, x: number, y: number) {
  const { borderTopWidth, borderTopColor, borderTopStyle } = getComputedStyle(item)
  const width = Number.parseFloat(borderTopWidth)
  if (!(width > 0) || borderTopStyle === 'none') return
  const dashes: Record<string, number[]> = { dashed: [2 * width, width], dotted: [width, width] }
  pen.save()
  pen.strokeStyle = borderTopColor
  pen.lineWidth = width
  pen.setLineDash(dashes[borderTopStyle] ?? [])
  pen.beginPath()
  pen.moveTo(x, y + width / 2)
  pen.lineTo(x + item.offsetWidth, y + width / 2)
  pen.stroke()
  pen.restore()
}

/** Word by word, because a text may run over several lines. */
function drawWords(pen: CanvasRenderingContext2D, text: Text, place: (box: DOMRect) => { x: number; y: number }) {
  const parent = text.parentElement
  if (!parent || parent.closest(`${CONTROLS}, style, title, desc`)) return
  const style = getComputedStyle(parent)
  if (style.visibility === 'hidden') return
  const drawing = parent instanceof SVGGraphicsElement ? parent : null
  const size = Number.parseFloat(style.fontSize) * scaleOf(drawing)
  pen.font = `${style.fontStyle} ${style.fontWeight} ${size}px ${style.fontFamily}`
  pen.fillStyle = drawing ? style.fill : style.color
  pen.textBaseline = 'middle'
  pen.lineJoin = 'round'
  pen.strokeStyle = style.stroke
  pen.lineWidth = Number.parseFloat(style.strokeWidth) * scaleOf(drawing)
  const halo = drawing !== null && style.paintOrder.startsWith('stroke') && style.stroke !== 'none'
  const range = document.createRange()
  for (const { 0: word, index } of text.data.matchAll(/\S+/g)) {
    range.setStart(text, index)
    range.setEnd(text, index + word.length)
    const box = range.getBoundingClientRect()
    const { x, y } = place(box)
    if (box.width === 0) continue
    if (halo) pen.strokeText(word, x, y + box.height / 2)
    pen.fillText(word, x, y + box.height / 2)
  }
}

/** Page pixels for each unit of a drawing; words in it may stand upright in a turned frame. */
function scaleOf(drawing: SVGGraphicsElement | null): number {
  const matrix = drawing?.getScreenCTM()
  return matrix ? Math.hypot(matrix.a, matrix.b) : 1
}

interface Box {
  x: number
  y: number
  width: number
  height: number
}

const SVG = 'http://www.w3.org/2000/svg'

/** All drawings of an area in one, because a browser takes its time for every image. Words are drawn in the page's own font. */
class Sheet {
  readonly #root = document.createElementNS(SVG, 'svg')
  width = 0
  height = 0

  add(drawing: SVGSVGElement, box: Box, styles: Styles) {
    const copy = drawing.cloneNode(true) as SVGSVGElement
    const originals = drawing.querySelectorAll<SVGElement>('*')
    for (const [index, element] of copy.querySelectorAll<SVGElement>('*').entries()) {
      element.setAttribute('class', styles.of(originals[index]!))
      element.removeAttribute('style')
    }
    copy.removeAttribute('class')
    copy.removeAttribute('style')
    copy.setAttribute('overflow', 'visible')
    for (const [name, value] of Object.entries(box)) copy.setAttribute(name, String(value))
    this.#root.append(copy)
    this.width = Math.max(this.width, box.x + box.width)
    this.height = Math.max(this.height, box.y + box.height)
  }

  async image(styles: Styles): Promise<HTMLImageElement> {
    const style = document.createElementNS(SVG, 'style')
    style.textContent = `${styles.sheet}text{display:none!important}`
    this.#root.prepend(style)
    this.#root.setAttribute('width', String(this.width))
    this.#root.setAttribute('height', String(this.height))
    const image = new Image()
    image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(this.#root))}`
    await image.decode()
    return image
  }
}
