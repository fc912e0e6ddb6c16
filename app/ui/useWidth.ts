import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Width of an element [px], kept up to date; 0 until it is on the page. */
export function useWidth<E extends HTMLElement>(): [RefObject<E | null>, number] {
  const element = useRef<E>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const node = element.current
    if (!node) return
    const observer = new ResizeObserver(([entry]) => entry && setWidth(Math.floor(entry.contentRect.width)))
    observer.observe(node)
    setWidth(Math.floor(node.clientWidth))
    return () => observer.disconnect()
  }, [])
  return [element, width]
}
