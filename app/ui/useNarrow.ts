import { useSyncExternalStore } from 'react'

/** One column up to this width, as in the style sheets [rem]. */
const COLUMN = 47.5

/** Whether the page is too narrow for more than one column; larger text makes it so as well as a smaller window. */
export const useNarrow = () => useSyncExternalStore(subscribe, isNarrow)

function isNarrow(): boolean {
  const { documentElement: page } = document
  return page.clientWidth <= COLUMN * Number.parseFloat(getComputedStyle(page).fontSize)
}

function subscribe(changed: () => void) {
  const line = document.createElement('div') // as wide as a letter is high: tells of another size of type
  line.style.cssText = 'position: absolute; width: 1rem; height: 0; visibility: hidden'
  document.body.append(line)
  const observer = new ResizeObserver(changed)
  for (const element of [line, document.documentElement]) observer.observe(element)
  return () => {
    observer.disconnect()
    line.remove()
  }
}
