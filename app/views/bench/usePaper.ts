import { type RefObject, useEffect, useRef } from 'react'

/** Room for picture and traces between the margins of the usual papers, below window and verdicts [px]. */
const ROOM = { width: 718, height: 700 }

/**
 * While the page is being printed: light colours, as paper is white, and a scale at which what was laid out for the window
 * is as wide as the paper. Pictures and charts have widths of their own, so that a style sheet alone cannot fit them.
 */
export function usePaper(): RefObject<HTMLElement | null> {
  const element = useRef<HTMLElement>(null)
  useEffect(() => {
    const root = document.documentElement
    let theme: string | undefined
    const before = () => {
      theme = root.dataset.theme
      root.dataset.theme = 'light'
      const node = element.current
      if (!node) return
      const scale = Math.min(1, ROOM.width / node.scrollWidth, ROOM.height / node.scrollHeight)
      node.style.setProperty('--paper-scale', String(scale))
    }
    const after = () => {
      if (theme === undefined) delete root.dataset.theme
      else root.dataset.theme = theme
    }
    window.addEventListener('beforeprint', before)
    window.addEventListener('afterprint', after)
    return () => {
      window.removeEventListener('beforeprint', before)
      window.removeEventListener('afterprint', after)
    }
  }, [])
  return element
}
