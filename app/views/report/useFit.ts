import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { type Fit, nextFit, type Paper, roomOf, START } from './fit.ts'

/** The roomiest fit with which the first page stands on one sheet. `content`: whatever its height depends on. */
export function useFit(paper: Paper, content: readonly unknown[]): { fit: Fit; sheet: RefObject<HTMLElement | null> } {
  const sheet = useRef<HTMLElement>(null)
  const [known, setKnown] = useState({ content: [] as readonly unknown[], search: START, done: false })
  const fonts = useFonts()
  const now = [paper, fonts, ...content]
  const same = now.length === known.content.length && now.every((each, i) => Object.is(each, known.content[i]))
  const search = same ? known.search : START
  useLayoutEffect(() => {
    if ((same && known.done) || !sheet.current) return
    const next = nextFit(search, heightOf(sheet.current) > roomOf(paper, search.fit.size).height)
    setKnown({ content: now, search: next ?? search, done: next === null })
  })
  return { fit: search.fit, sheet }
}

/** Height of the first page as it is printed [em], whatever the window is. */
function heightOf(sheet: HTMLElement): number {
  sheet.dataset.measured = 'true'
  const page = sheet.querySelector('.report-page')!
  const height = page.getBoundingClientRect().height / Number.parseFloat(getComputedStyle(page).fontSize)
  delete sheet.dataset.measured
  return height
}

/** Counts up once the fonts are there, as they set the height. */
function useFonts(): number {
  const [count, setCount] = useState(0)
  useEffect(() => {
    let there = true
    document.fonts.ready.then(() => there && setCount(1))
    return () => {
      there = false
    }
  }, [])
  return count
}
