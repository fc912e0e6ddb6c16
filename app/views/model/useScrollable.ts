import { type RefObject, useEffect } from 'react'

/** Equations wider than their box scroll, and only those can be reached by keyboard. */
export function useScrollable(around: RefObject<HTMLElement | null>) {
  useEffect(() => {
    const { current } = around
    if (!current) return
    const watch = new ResizeObserver(() => {
      for (const box of current.querySelectorAll<HTMLElement>('.equation')) {
        if (box.scrollWidth > box.clientWidth) box.tabIndex = 0
        else box.removeAttribute('tabindex')
      }
    })
    watch.observe(current)
    return () => watch.disconnect()
  }, [around])
}
