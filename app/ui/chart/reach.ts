/** Gives a chart hands: what pointers, wheel and seldom keys do is loaded when a chart is first touched or gets the focus. */
import { useEffect } from 'react'
import type { Surface } from './group.ts'
import type { Hands } from './hands.ts'

const EVENTS = ['pointerdown', 'pointermove', 'pointerup', 'pointercancel', 'wheel', 'keydown'] as const
/** Keys beside those that every slider has. */
const KEYS = ['+', '=', '-', '0', 'm', 'x', 'c', 'Escape']

type Module = typeof import('./hands.ts')

/** Hands are the same for all charts: once loaded, what a chart hears it does at once, in the order of the keys. */
let known: Module | null = null
const fetchHands = async () => {
  known = await import('./hands.ts')
  return known
}

/** Puts a chart into its group and lets it be touched. `surface` is null until there is something to touch. */
export function useHands(surface: Surface | null) {
  useEffect(() => {
    if (!surface) return
    const { element, group } = surface
    group.surfaces.push(surface)
    group.surfaces.sort((a, b) => (a.element.compareDocumentPosition(b.element) & 4 ? -1 : 1))
    const waiting: Event[] = []
    let hands: Hands | null = null
    const begin = (module: Module) => {
      hands ??= new module.Hands(surface)
      for (const each of waiting.splice(0)) hands.hear(each)
    }
    /** Where hands cannot be fetched, the next touch tries again. */
    const forget = () => void waiting.splice(0)
    const hear = (event: Event) => {
      if (!wanted(event, element)) return
      waiting.push(event)
      if (known) begin(known)
      else if (waiting.length === 1) fetchHands().then(begin, forget)
    }
    const soon = () => {
      if (!known) fetchHands().catch(() => {})
    }
    element.addEventListener('focusin', soon)
    for (const type of EVENTS) element.addEventListener(type, hear, { passive: false })
    return () => {
      element.removeEventListener('focusin', soon)
      for (const type of EVENTS) element.removeEventListener(type, hear)
      group.surfaces.splice(group.surfaces.indexOf(surface), 1)
    }
  }, [surface])
}

/** The wheel scrolls the page unless the chart has the focus, or Ctrl is held, as a pinch on a touch pad says it. */
function wanted(event: Event, element: HTMLElement): boolean {
  if (event instanceof WheelEvent) return event.ctrlKey || element.contains(document.activeElement)
  if (event instanceof KeyboardEvent)
    return KEYS.includes(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey
  return true
}
