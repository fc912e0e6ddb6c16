/** A bushing, the bore that it is pressed into, what presses it, and what the joint has to be in the end. */
import type Type from 'typebox'
import { boundsOf } from '../bounds.ts'
import { PRESS_FIGURES } from './figures.ts'
import { bore, bushing, joint } from './joint.ts'
import { pressApproach, ram } from './ram.ts'
import { window } from './window.ts'

export const PRESS = { bushing, bore, joint, ram, window }

/** What a press has in place of what is written for a grip. */
export const PRESS_SHARED = { approach: pressApproach, requirements: boundsOf(PRESS_FIGURES) }

export type PressGroups = { [K in keyof typeof PRESS]: Type.Static<(typeof PRESS)[K]> }
