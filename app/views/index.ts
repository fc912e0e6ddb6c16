/** The registry of views: a new one is one folder and one line here. */
import { type ComponentType, lazy } from 'react'
import type { JobId } from '../../sim/index.ts'
import { Bench } from './bench/Bench.tsx'

export interface View {
  id: string
  label: string
  Component: ComponentType
  /** Jobs of a scenario that it can show; left out: gripping alone. A view that asks for none of it takes any. */
  jobs?: readonly JobId[] | 'any'
  /** It has the window to itself: without the bar on top, and opened from elsewhere. */
  alone?: boolean
  /** It stands in no list of views and is opened from elsewhere. */
  unlisted?: boolean
}

/** Whether a view shows a job. */
export const takes = ({ jobs = ['grip'] }: Pick<View, 'jobs'>, job: JobId): boolean =>
  jobs === 'any' || jobs.includes(job)

/** Views other than the first are loaded when they are opened. */
const later = <N extends string>(name: N, load: () => Promise<Record<N, ComponentType>>) =>
  lazy(async () => ({ default: (await load())[name] }))

export const VIEWS: View[] = [
  { id: 'bench', label: 'Bench', Component: Bench, jobs: 'any' },
  {
    id: 'live',
    label: 'Live',
    Component: later('Live', () => import('./live/Live.tsx')),
    jobs: ['grip', 'press', 'cap', 'web'],
  },
  {
    id: 'actuators',
    label: 'Actuators',
    Component: later('Actuators', () => import('./actuators/Actuators.tsx')),
    jobs: 'any',
  },
  { id: 'loops', label: 'Loops', Component: later('Loops', () => import('./loops/Loops.tsx')), jobs: 'any' },
  { id: 'spread', label: 'Spread', Component: later('Spread', () => import('./spread/Spread.tsx')), jobs: 'any' },
  { id: 'log', label: 'Log', Component: later('Log', () => import('./log/Log.tsx')) },
  { id: 'lessons', label: 'Lessons', Component: later('Lessons', () => import('./lessons/Lessons.tsx')), jobs: 'any' },
  { id: 'report', label: 'Report', Component: later('Report', () => import('./report/Report.tsx')), jobs: 'any' },
  {
    id: 'model',
    label: 'Model',
    Component: later('Model', () => import('./model/Model.tsx')),
    jobs: 'any',
  },
  {
    id: 'new-job',
    label: 'New job',
    Component: later('NewJob', () => import('./new-job/NewJob.tsx')),
    jobs: 'any',
    unlisted: true,
  },
  {
    id: 'present',
    label: 'Customer view',
    Component: later('Present', () => import('./present/Present.tsx')),
    jobs: 'any',
    alone: true,
  },
]
