import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

export interface Size {
  width: number
  height: number
}

/** Inner size of an element [px], kept up to date; null until it is on the page. */
export function useSize<E extends HTMLElement>(): [RefObject<E | null>, Size | null] {
  const element = useRef<E>(null)
  const [size, setSize] = useState<Size | null>(null)
  useLayoutEffect(() => {
    const node = element.current
    if (!node) return
    const read = () => setSize({ width: node.clientWidth, height: node.clientHeight })
    const observer = new ResizeObserver(read)
    observer.observe(node)
    read()
    return () => observer.disconnect()
  }, [])
  return [element, size]
}

/** Type that is read across a table: a share of the window, never smaller than on the bench [px]. */
export const textSize = ({ width, height }: Size) => Math.max(16, Math.min(width / 62, height / 34, 48))

/** Narrower than this [px] everything stands in one column and the page scrolls. */
export const ONE_COLUMN = 700
