/** A closure, the liner that seals it, the chuck that turns it on, and what it has to be in the end. */
import type Type from 'typebox'
import { boundsOf } from '../bounds.ts'
import { capApproach, chuck } from './chuck.ts'
import { closure, liner } from './closure.ts'
import { CAP_FIGURES } from './figures.ts'
import { capWindow } from './window.ts'

export const CAP = { closure, liner, chuck, window: capWindow }

/** What a closure has in place of what is written for a grip; the rest is that of any output that turns. */
export const CAP_SHARED = { approach: capApproach, requirements: boundsOf(CAP_FIGURES) }

export type CapGroups = { [K in keyof typeof CAP]: Type.Static<(typeof CAP)[K]> }
