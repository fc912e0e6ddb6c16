/** The slides in their order, and what keys ask of them. Knows no React. */
import { type Scenario, shownAs } from '../../../sim/index.ts'

export type SlideId = 'job' | 'run' | 'outcome' | 'parts' | 'axes' | 'why'

export interface Slide {
  id: SlideId
  title: string
}

interface Matter {
  scenario: Pick<Scenario, 'job'>
  /** An axis stands beside that of the bench. */
  paired: boolean
  /** The file says how parts differ. */
  varies: boolean
}

/** The slides that there is something to show on. */
export const slidesFor = ({ scenario, paired, varies }: Matter): Slide[] => [
  { id: 'job', title: 'The job' },
  { id: 'run', title: shownAs(scenario).title },
  { id: 'outcome', title: 'What came of it' },
  ...(varies ? [{ id: 'parts' as const, title: `Many ${shownAs(scenario).works}` }] : []),
  ...(paired ? [{ id: 'axes' as const, title: 'The two axes' }] : []),
  { id: 'why', title: 'Why' },
]

/** The slide at a place; places beyond the ends are the first and the last. */
export const slideAt = (place: number, slides: readonly Slide[]) => slides[within(place, slides)]!

export const within = (place: number, slides: readonly Slide[]) => Math.min(slides.length - 1, Math.max(0, place))

export type Command =
  | { kind: 'go'; slide: number }
  /** To the next or the last instant at which something happened; where there is none left, on to `slide`. */
  | { kind: 'step'; by: 1 | -1; slide: number | null }
  | { kind: 'play' }
  | { kind: 'leave' }

interface Where {
  slide: number
  /** Nothing plays by itself: the keys that change slides first walk through the instants of the run. */
  still: boolean
  slides: readonly Slide[]
}

/** What a key asks for; null: nothing. The page keys are those of a presenter's remote control. */
export function commandFor(key: string, shift: boolean, { slide, still, slides }: Where): Command | null {
  const runs = slideAt(slide, slides).id === 'run'
  const turn = (by: 1 | -1): Command | null => {
    const next = within(slide + by, slides)
    if (runs && still) return { kind: 'step', by, slide: next }
    return next === slide ? null : { kind: 'go', slide: next }
  }
  switch (key) {
    case 'ArrowRight':
    case 'PageDown':
      return turn(1)
    case 'ArrowLeft':
    case 'PageUp':
      return turn(-1)
    case ' ':
      return runs && !still ? { kind: 'play' } : turn(shift ? -1 : 1)
    case 'ArrowDown':
      return runs ? { kind: 'step', by: 1, slide: null } : null
    case 'ArrowUp':
      return runs ? { kind: 'step', by: -1, slide: null } : null
    case 'Home':
      return { kind: 'go', slide: 0 }
    case 'End':
      return { kind: 'go', slide: slides.length - 1 }
    case 'Escape':
      return { kind: 'leave' }
    default:
      return null
  }
}
