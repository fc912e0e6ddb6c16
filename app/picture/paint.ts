/** Fills of cut faces. Their patterns live in each picture's own <defs>, so that pictures do not depend on one another. */
import { createContext, useContext } from 'react'

export const FILLS = [
  'body',
  'moving',
  'nut',
  'iron',
  'sheets',
  'rubber',
  'part',
  'soft',
  'damage',
  'toward',
  'away',
  'housing',
] as const
export type Fill = (typeof FILLS)[number]
export type Paint = Record<Fill, string>

export const fillId = (picture: string, fill: Fill) => `${picture}-${fill}`

export const paintOf = (picture: string): Paint =>
  Object.fromEntries(FILLS.map((fill) => [fill, `url(#${fillId(picture, fill)})`])) as Paint

export const PaintContext = createContext<Paint>(paintOf('picture'))
export const usePaint = () => useContext(PaintContext)
