/** Where the note of a focused or pointed-at field is shown; without a place for it the field shows it beneath itself. */
import { createContext } from 'react'

export interface Note {
  title: string
  text: string
  /** Allowed range and preset value, in the shown unit. */
  range?: string
}

export const NoteContext = createContext<((note: Note | null) => void) | null>(null)
