/** The drawings of actuator families: that of the axis that the page opens with is here, the others come when the first of them is shown. */
import { use } from 'react'
import type { Actuator, Scenario } from '../../../sim/index.ts'
import { brushlessScrew } from './brushlessScrew.tsx'
import type { FamilyDrawing } from './drawing.ts'

const FIRST = { 'brushless-screw': brushlessScrew }

export type FirstFamily = keyof typeof FIRST

const HERE: Partial<Record<Actuator['family'], FamilyDrawing>> = { ...FIRST }

let coming: Promise<void> | undefined

/** Rejects where they cannot be fetched; another call then tries again. */
export function fetchDrawings(): Promise<void> {
  coming ??= import('./others.ts').then(
    ({ OTHER_DRAWINGS }) => void Object.assign(HERE, OTHER_DRAWINGS),
    (error: unknown) => {
      coming = undefined
      throw error
    },
  )
  return coming
}

/** Fetched or not: a picture waits for it once. */
let settled: Promise<void> | undefined

/** Suspends until it is here; null: it could not be fetched. Throws a TypeError for an axis that moves no jaw. */
export function useDrawing({ actuator }: Pick<Scenario, 'actuator'>): FamilyDrawing | null {
  if (actuator.kind === 'spindle') throw new TypeError('a spindle moves no jaw')
  settled ??= HERE[actuator.family] ? undefined : fetchDrawings().catch(() => {})
  if (settled && !HERE[actuator.family]) use(settled)
  return HERE[actuator.family] ?? null
}
