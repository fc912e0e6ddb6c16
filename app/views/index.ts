/** The registry of views: a new one is one folder and one line here. */
import { type ComponentType, lazy } from 'react'
import { fetchDrawings } from '../picture/families/registry.ts'
import { fetchOthers } from '../store/others.ts'
import { Bench } from './bench/Bench.tsx'

export interface View {
  id: string
  label: string
  Component: ComponentType
  /** It has the window to itself: without the bar on top, and opened from elsewhere. */
  alone?: boolean
  /** It stands in no list of views and is opened from elsewhere. */
  unlisted?: boolean
}

/** Views other than the first are loaded when they are opened, each with every job and every drawing at hand. */
const later = <N extends string>(name: N, load: () => Promise<Record<N, ComponentType>>) =>
  lazy(async () => {
    await Promise.all([fetchOthers(), fetchDrawings()])
    return { default: (await load())[name] }
  })

export const VIEWS: View[] = [
  { id: 'bench', label: 'Bench', Component: Bench },
  {
    id: 'live',
    label: 'Live',
    Component: later('Live', () => import('./live/Live.tsx')),
  },
  {
    id: 'actuators',
    label: 'Actuators',
    Component: later('Actuators', () => import('./actuators/Actuators.tsx')),
  },
  { id: 'loops', label: 'Loops', Component: later('Loops', () => import('./loops/Loops.tsx')) },
  { id: 'spread', label: 'Spread', Component: later('Spread', () => import('./spread/Spread.tsx')) },
  { id: 'log', label: 'Log', Component: later('Log', () => import('./log/Log.tsx')) },
  { id: 'lessons', label: 'Lessons', Component: later('Lessons', () => import('./lessons/Lessons.tsx')) },
  { id: 'report', label: 'Report', Component: later('Report', () => import('./report/Report.tsx')) },
  {
    id: 'model',
    label: 'Model',
    Component: later('Model', () => import('./model/Model.tsx')),
  },
  {
    id: 'new-job',
    label: 'New job',
    Component: later('NewJob', () => import('./new-job/NewJob.tsx')),
    unlisted: true,
  },
  {
    id: 'present',
    label: 'Customer view',
    Component: later('Present', () => import('./present/Present.tsx')),
    alone: true,
  },
]
