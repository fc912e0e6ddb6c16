/** Draws a part of the page on a canvas: its drawings, its charts and its words, each where it stands. */

/** What only serves to operate the page, or is folded away. */
const CONTROLS = 'button, fieldset, label, select, input, summary, details:not([open]), .sr-only, [hidden]'

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
  'transform',
  'vector-effect',
]

export async function drawArea(pen: CanvasRenderingContext2D, area: HTMLElement, left: number, top: number) {
  const frame = area.getBoundingClientRect()
  const place = (box: DOMRect) => ({
    x: box.left - frame.left + area.scrollLeft + left,
    y: box.top - frame.top + area.scrollTop + top,
  })
  for (const item of area.querySelectorAll<SVGSVGElement | HTMLCanvasElement>('svg, canvas')) {
    if (item.closest(CONTROLS) || item.parentElement?.closest('svg')) continue
    const box = item.getBoundingClientRect()
    if (box.width === 0 || box.height === 0) continue
    const { x, y } = place(box)
    pen.drawImage(item instanceof SVGSVGElement ? await imageOf(item, box) : item, x, y, box.width, box.height)
  }
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
  const inDrawing = parent instanceof SVGElement
  pen.font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`
  pen.fillStyle = inDrawing ? style.fill : style.color
  pen.textBaseline = 'middle'
  const range = document.createRange()
  for (const { 0: word, index } of text.data.matchAll(/\S+/g)) {
    range.setStart(text, index)
    range.setEnd(text, index + word.length)
    const box = range.getBoundingClientRect()
    const { x, y } = place(box)
    if (box.width > 0) pen.fillText(word, x, y + box.height / 2)
  }
}

/** A drawing without its words, which are drawn in the page's own font. */
async function imageOf(drawing: SVGSVGElement, box: DOMRect): Promise<HTMLImageElement> {
  const copy = drawing.cloneNode(true) as SVGSVGElement
  const originals = drawing.querySelectorAll<SVGElement>('*')
  for (const [index, element] of copy.querySelectorAll<SVGElement>('*').entries()) {
    const style = getComputedStyle(originals[index]!)
    for (const property of DRAWN) element.style.setProperty(property, style.getPropertyValue(property))
  }
  for (const words of copy.querySelectorAll('text')) words.remove()
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(box.width))
  copy.setAttribute('height', String(box.height))
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`
  await image.decode()
  return image
}
