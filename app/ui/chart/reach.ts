/** Gives a chart hands: what pointers, wheel and seldom keys do is loaded when a chart is first touched. */
import { useEffect } from 'react'
import type { Surface } from './group.ts'
import type { Hands } from './hands.ts'

const EVENTS = ['pointerdown', 'pointermove', 'pointerup', 'pointercancel', 'wheel', 'keydown'] as const
/** Keys beside those that every slider has. */
const KEYS = ['+', '=', '-', '0', 'm', 'x', 'c', 'Escape']

/** Puts a chart into its group and lets it be touched. `surface` is null until there is something to touch. */
export function useHands(surface: Surface | null) {
  useEffect(() => {
    if (!surface) return
    const { element, group } = surface
    group.surfaces.push(surface)
    group.surfaces.sort((a, b) => (a.element.compareDocumentPosition(b.element) & 4 ? -1 : 1))
    const waiting: Event[] = []
    let hands: Hands | null = null
    const hear = (event: Event) => {
      if (!wanted(event, element)) return
      if (hands) return hands.hear(event)
      if (waiting.push(event) > 1) return
      import('./hands.ts').then((module) => {
        hands = new module.Hands(surface)
        for (const each of waiting) hands.hear(each)
      })
    }
    for (const type of EVENTS) element.addEventListener(type, hear, { passive: false })
    return () => {
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
