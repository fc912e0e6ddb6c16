/** Fits the report onto one sheet: smaller type first, then part after part is left to the further pages. Knows no React. */

/** What leaves the first page, one after the other, until it fits; in words for the reader. */
export const LEAVING = {
  assumed: 'what is assumed',
  changes: 'what was changed',
  varies: 'how parts differ',
  log: 'what was fitted to a log',
  causes: 'the table of causes',
  notes: 'the end of the notes',
  moves: 'further moves',
  figures: 'lesser figures',
  margins: 'the margins of the loops',
  settings: 'the end of the settings',
  fitted: 'settings of the second axis',
  job: 'what is worked on, and the axis',
} as const

export type Leaving = keyof typeof LEAVING

export interface Fit {
  /** Size of the type [pt]. */
  size: number
  left: readonly Leaving[]
}

const SIZES = [8.5, 8, 7.5, 7]
const PARTS = Object.keys(LEAVING) as Leaving[]

/** A way through the fits: what is tried now, and which parts are still to be brought back. */
export interface Search {
  fit: Fit
  /** The last fit that stood on one page, while parts that need not have left are brought back; null: none has yet. */
  fits: Fit | null
  /** Parts that have been asked for again. */
  asked: number
}

export const START: Search = { fit: { size: SIZES[0]!, left: [] }, fits: null, asked: 0 }

/** What to try next once it is known whether the present one is too tall; null: this is it. */
export function nextFit({ fit, fits, asked }: Search, tooTall: boolean): Search | null {
  if (fits === null && tooTall) {
    const tighter = tighterThan(fit)
    return tighter && { fit: tighter, fits, asked }
  }
  const known = tooTall ? fits! : fit
  // The part that left last is the one that was needed.
  const again = known.left.filter((part) => PARTS.indexOf(part) >= asked).slice(0, -1)[0]
  if (again === undefined) return known === fit ? null : { fit: known, fits: known, asked: PARTS.length }
  const left = known.left.filter((part) => part !== again)
  return { fit: { ...known, left }, fits: known, asked: PARTS.indexOf(again) + 1 }
}

function tighterThan({ size, left }: Fit): Fit | null {
  const smaller = SIZES[SIZES.indexOf(size) + 1]
  if (smaller !== undefined) return { size: smaller, left }
  const next = PARTS[left.length]
  return next === undefined ? null : { size, left: [...left, next] }
}

/** What the margins of the style sheet leave of the paper [mm]. */
const PAPERS = { a4: { width: 190, height: 284 }, letter: { width: 195.9, height: 266.4 } }
export type Paper = keyof typeof PAPERS

const MILLIMETRES = 25.4 / 72
/** Printers and screens round lines and letters differently; this much of the height stays free for it. */
const SPARE = 0.02

/** Room of a sheet in its own type [em]. */
export function roomOf(paper: Paper, size: number): { width: number; height: number } {
  const { width, height } = PAPERS[paper]
  const em = size * MILLIMETRES
  return { width: width / em, height: (height / em) * (1 - SPARE) }
}
