/** What is done to a chart by hand: drag, press, double press, wheel, pinch, and the keys that do the same. */
import { type Range, type Surface, showWhole, type View } from './group.ts'
import { copyReading } from './reading.ts'

/** Movement from which on a press is a drag, and height from which on a dragged frame is meant, not a span of the axis [px]. */
const DRAG = 4
const FRAME = 24
/** How near to a cursor's line it is taken hold of [px]. */
const NEAR = 6
/** Two presses are one double press within so much time [ms] and distance [px]. */
const DOUBLE = { time: 400, distance: 24 }
/** Zoom of a key, and of a pixel of the wheel. */
const KEY_ZOOM = 1.5
const WHEEL_ZOOM = 1.002
/** Pixels of a line of the wheel. */
const WHEEL_LINE = 16

interface Point {
  x: number
  y: number
}

type Doing =
  | { kind: 'frame'; from: Point; moved: boolean }
  | { kind: 'cursor' | 'mark' }
  | { kind: 'pinch'; view: Required<View>; middle: Point; apart: number }

export class Hands {
  readonly #surface: Surface
  readonly #frame = document.createElement('div')
  /** Pointers that are down. */
  readonly #down = new Map<number, Point>()
  #doing: Doing | null = null
  #last = { time: Number.NEGATIVE_INFINITY, x: 0, y: 0 }

  constructor(surface: Surface) {
    this.#surface = surface
    this.#frame.className = 'chart-frame'
  }

  hear(event: Event) {
    if (event instanceof WheelEvent) return this.#wheel(event)
    if (event instanceof KeyboardEvent) return keyed(this.#surface, event)
    if (!(event instanceof PointerEvent)) return
    if (event.type === 'pointerdown') this.#press(event)
    else if (event.type === 'pointermove') this.#move(event)
    else this.#release(event)
  }

  #press(event: PointerEvent) {
    if (event.button !== 0) return
    const { element } = this.#surface
    hold(element, event.pointerId)
    const at = placeOf(event)
    this.#down.set(event.pointerId, at)
    if (this.#down.size === 2) return this.#beginPinch()
    if (this.#isSecondPress(event)) {
      this.#doing = null
      return showWhole(this.#surface.group)
    }
    this.#doing = this.#begin(event, at)
    if (this.#doing.kind !== 'frame') this.#move(event)
  }

  #begin(event: PointerEvent, at: Point): Doing {
    const surface = this.#surface
    const { mark } = surface.group.use.getState()
    const near = (cursor: number | null) => cursor !== null && Math.abs(surface.placeOf(cursor) - at.x) <= NEAR
    if (event.shiftKey || near(mark)) return { kind: 'mark' }
    if (event.pointerType === 'touch' || near(surface.cursor())) return { kind: 'cursor' }
    return { kind: 'frame', from: at, moved: false }
  }

  #move(event: PointerEvent) {
    const at = placeOf(event)
    if (this.#down.has(event.pointerId)) this.#down.set(event.pointerId, at)
    const doing = this.#doing
    if (!doing || !this.#down.has(event.pointerId)) return
    if (doing.kind === 'pinch') return this.#pinch(doing)
    if (doing.kind !== 'frame') return this.#set(doing.kind, at)
    doing.moved ||= Math.hypot(at.x - doing.from.x, at.y - doing.from.y) > DRAG
    if (!doing.moved) return
    // A press that has become a drag is not the first of two.
    this.#last = { ...this.#last, time: Number.NEGATIVE_INFINITY }
    this.#drawFrame(doing.from, at)
  }

  #release(event: PointerEvent) {
    const doing = this.#doing
    this.#down.delete(event.pointerId)
    this.#frame.remove()
    if (doing?.kind === 'frame' && event.type === 'pointerup') {
      if (doing.moved) this.#zoomTo(doing.from, placeOf(event))
      else this.#set('cursor', doing.from)
    }
    if (doing?.kind !== 'pinch' || this.#down.size === 0) this.#doing = null
  }

  #set(which: 'cursor' | 'mark', { x, y }: Point) {
    const { group } = this.#surface
    const value = this.#surface.pick(x, y)
    if (which === 'cursor') this.#surface.setCursor(value)
    else group.use.setState({ mark: value })
  }

  #isSecondPress({ timeStamp, clientX, clientY }: PointerEvent): boolean {
    const { time, x, y } = this.#last
    const second = timeStamp - time < DOUBLE.time && Math.hypot(clientX - x, clientY - y) < DOUBLE.distance
    this.#last = { time: second ? Number.NEGATIVE_INFINITY : timeStamp, x: clientX, y: clientY }
    return second
  }

  #drawFrame(from: Point, to: Point) {
    const { element } = this.#surface
    const { left, top } = element.getBoundingClientRect()
    const { x, y } = framed(this.#surface, from, to)
    this.#frame.style.cssText = `left:${x[0] - left}px;top:${y[0] - top}px;width:${x[1] - x[0]}px;height:${y[1] - y[0]}px`
    if (!this.#frame.isConnected) element.append(this.#frame)
  }

  #zoomTo(from: Point, to: Point) {
    const surface = this.#surface
    const { x, y, all } = framed(surface, from, to)
    const { left, top, width, height } = surface.area()
    const shown = surface.shown()
    const across = (place: number) => shown.x[0] + ((place - left) / width) * (shown.x[1] - shown.x[0])
    const up = (place: number) => shown.y[1] - ((place - top) / height) * (shown.y[1] - shown.y[0])
    const view: View = { x: [across(x[0]), across(x[1])] }
    if (!all) view.y = [up(y[1]), up(y[0])]
    if (view.x[1] > view.x[0]) surface.show(view)
  }

  #beginPinch() {
    const [a, b] = [...this.#down.values()] as [Point, Point]
    this.#doing = { kind: 'pinch', view: this.#surface.shown(), middle: between(a, b), apart: distance(a, b) }
  }

  #pinch({ view, middle, apart }: Extract<Doing, { kind: 'pinch' }>) {
    const [a, b] = [...this.#down.values()]
    if (!a || !b) return
    const factor = apart / Math.max(1, distance(a, b))
    zoom(this.#surface, factor, middle, between(a, b), view)
  }

  #wheel(event: WheelEvent) {
    const surface = this.#surface
    const before = surface.shown()
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? WHEEL_LINE : 1
    const at = placeOf(event)
    if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
      const by = unit * (event.deltaX || event.deltaY)
      zoom(surface, 1, { x: at.x + by, y: at.y }, at)
    } else zoom(surface, WHEEL_ZOOM ** (unit * event.deltaY), at)
    // What cannot be zoomed out further leaves the wheel to the page.
    if (!same(before.x, surface.shown().x)) event.preventDefault()
  }
}

/** Zooms by a factor, less than 1 to look closer: what lies at `from` in `view` comes to `to`. Places in px of the window. */
export function zoom(surface: Surface, factor: number, from: Point, to = from, view = surface.shown()) {
  const { left, top, width, height } = surface.area()
  const share = { from: (from.x - left) / width, to: (to.x - left) / width }
  const rise = { from: 1 - (from.y - top) / height, to: 1 - (to.y - top) / height }
  const bounds = surface.bounds()
  const x = scaled(view.x, factor, share, bounds.x)
  if (!surface.even) surface.show(same(x, bounds.x) ? null : { x })
  else surface.show({ x, y: scaled(view.y, factor, rise, bounds.y ?? view.y) })
}

/** The finest part of what there is that can be shown. */
const FINEST = 1e-6

function scaled([a, b]: Range, factor: number, { from, to }: { from: number; to: number }, bounds: Range): Range {
  const whole = bounds[1] - bounds[0]
  const span = Math.min(whole, Math.max(FINEST * whole, (b - a) * factor))
  const start = a + from * (b - a) - to * span
  const kept = Math.min(bounds[1] - span, Math.max(bounds[0], start))
  return [kept, kept + span]
}

const same = (a: Range, b: Range) => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) <= 1e-9 * Math.abs(b[1] - b[0])

/** Zooms about the cursor, if it is seen, else about the middle. */
export function zoomAtCursor(surface: Surface, factor: number) {
  const { left, top, width, height } = surface.area()
  const cursor = surface.cursor()
  const place = cursor === null ? Number.NaN : surface.placeOf(cursor)
  const seen = place >= left && place <= left + width
  zoom(surface, factor, { x: seen ? place : left + width / 2, y: top + height / 2 })
}

/** The second cursor comes where the first one is, and goes. */
export function toggleMark({ use }: Surface['group']) {
  const { mark, cursor } = use.getState()
  use.setState({ mark: mark === null ? cursor : null })
}

function keyed(surface: Surface, event: KeyboardEvent) {
  const { group } = surface
  const { mark, window } = group.use.getState()
  const cursor = surface.cursor()
  switch (event.key) {
    case '+':
    case '=':
      return zoomAtCursor(surface, 1 / KEY_ZOOM)
    case '-':
      return zoomAtCursor(surface, KEY_ZOOM)
    case '0':
      return showWhole(group)
    case 'm':
      return toggleMark(group)
    case 'c':
      return void copyReading(group)
    case 'x':
      if (mark === null || cursor === null) return
      surface.setCursor(mark)
      return group.use.setState({ mark: cursor })
    case 'Escape':
      if (mark === null && window === null) return
      event.preventDefault()
      event.stopPropagation()
      if (mark !== null) group.use.setState({ mark: null })
      else showWhole(group)
  }
}

/** The dragged frame on screen; `all` of the height unless it is clearly meant. */
function framed(surface: Surface, from: Point, to: Point): { x: Range; y: Range; all: boolean } {
  const { left, top, width, height } = surface.area()
  const inside = (a: number, b: number, low: number, size: number): Range => [
    Math.max(low, Math.min(a, b)),
    Math.min(low + size, Math.max(a, b)),
  ]
  const x = inside(from.x, to.x, left, width)
  const all = !surface.even && Math.abs(to.y - from.y) < FRAME
  return { x, y: all ? [top, top + height] : inside(from.y, to.y, top, height), all }
}

/** Keeps a pointer that leaves the chart; one that was down only while hands were being loaded is gone. */
function hold(element: HTMLElement, pointer: number) {
  try {
    element.setPointerCapture(pointer)
  } catch {
    // What it did has been heard all the same.
  }
}

const placeOf = ({ clientX, clientY }: MouseEvent): Point => ({ x: clientX, y: clientY })
const between = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })
const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y)
