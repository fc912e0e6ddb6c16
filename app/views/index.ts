/** The registry of views: a new one is one folder and one line here. */
import { type ComponentType, lazy } from 'react'
import { Actuators } from './actuators/Actuators.tsx'
import { Bench } from './bench/Bench.tsx'
import { Live } from './live/Live.tsx'
import { Loops } from './loops/Loops.tsx'
import { Report } from './report/Report.tsx'

/** Opened seldom: loaded when it is opened. */
const Lessons = lazy(() => import('./lessons/Lessons.tsx').then((loaded) => ({ default: loaded.Lessons })))
const Model = lazy(() => import('./model/Model.tsx').then((loaded) => ({ default: loaded.Model })))
const Present = lazy(() => import('./present/Present.tsx').then((loaded) => ({ default: loaded.Present })))

export interface View {
  id: string
  label: string
  Component: ComponentType
  /** It has the window to itself: without the bar on top, and opened from elsewhere. */
  alone?: boolean
}

export const VIEWS: View[] = [
  { id: 'bench', label: 'Bench', Component: Bench },
  { id: 'live', label: 'Live', Component: Live },
  { id: 'actuators', label: 'Actuators', Component: Actuators },
  { id: 'loops', label: 'Loops', Component: Loops },
  { id: 'lessons', label: 'Lessons', Component: Lessons },
  { id: 'report', label: 'Report', Component: Report },
  { id: 'model', label: 'Model', Component: Model },
  { id: 'present', label: 'Customer view', Component: Present, alone: true },
]
