/** How the live plant of each job looks: its picture, its traces, and the figures that are its own. */
import { type ComponentType, lazy } from 'react'
import type { JobId, LiveState, Scenario } from '../../../sim/index.ts'
import type { Quantity } from '../../read/units.ts'
import type { Panel } from './panels.ts'

export interface PictureProps {
  scenario: Scenario
  /** Null: the first piece is not there yet. */
  state: LiveState | null
  width: number
  height: number
}

export interface OwnFigure {
  label: string
  note: string
  quantity: Quantity
  channel: string
}

export interface LiveLook {
  Picture: ComponentType<PictureProps>
  panels: { effort: Pick<Panel, 'channel' | 'behind'>; speed?: Partial<Panel> }
  /** What the thin lines are. */
  behind: string
  figures: OwnFigure[]
}

/** A picture is loaded with its job alone. */
const later = <N extends string>(name: N, load: () => Promise<Record<N, ComponentType<PictureProps>>>) =>
  lazy(async () => ({ default: (await load())[name] }))

const LOOKS: Partial<Record<JobId, LiveLook>> = {
  grip: {
    Picture: later('GripPicture', () => import('./pictures/GripPicture.tsx')),
    panels: { effort: { channel: 'force', behind: 'farForce' } },
    behind: 'Thin lines: the far contact, and the current and speed that the drive wants.',
    figures: [
      { label: 'Sag', note: 'How far the part has come down in the jaws.', quantity: 'length', channel: 'sag' },
    ],
  },
  press: {
    Picture: later('PressPicture', () => import('./pictures/PressPicture.tsx')),
    panels: { effort: { channel: 'force', behind: 'jointForce' } },
    behind: 'Thin lines: the force of the joint, and the current and speed that the drive wants.',
    figures: [
      { label: 'Depth', note: 'How deep the bushing stands in its bore.', quantity: 'length', channel: 'depth' },
    ],
  },
  cap: {
    Picture: later('CapPicture', () => import('./pictures/CapPicture.tsx')),
    panels: { effort: { channel: 'torque', behind: 'threadTorque' } },
    behind: 'Thin lines: the torque of the thread, and the current and speed that the drive wants.',
    figures: [
      { label: 'Angle', note: 'Of the closure since the head first set out.', quantity: 'turns', channel: 'angle' },
      { label: 'Preload', note: 'Force of the closure on its liner.', quantity: 'force', channel: 'preload' },
    ],
  },
  web: {
    Picture: later('WebPicture', () => import('./pictures/WebPicture.tsx')),
    panels: {
      effort: { channel: 'tension', behind: 'rollTension' },
      speed: {
        label: 'Speed of the rim',
        quantity: 'speed',
        channel: 'rimSpeed',
        behind: 'lineSpeed',
        calm: ({ approach }) => CALM_RIM * approach.speed,
      },
    },
    behind: 'Thin lines: the tension at the roll, the current that the drive wants, and the speed of the line.',
    figures: [
      { label: 'Line', note: 'Speed of the line.', quantity: 'speed', channel: 'lineSpeed' },
      { label: 'Slack', note: 'How much longer the web is than its span.', quantity: 'length', channel: 'slack' },
      { label: 'Roll radius', note: 'With what it has wound.', quantity: 'length', channel: 'radius' },
    ],
  },
}

/** Radius of a usual roll [m], by which a turn makes way; common practice, no source. */
const CALM_RIM = 0.05

/** Throws a RangeError for a job that has none. */
export function lookOf({ job }: Pick<Scenario, 'job'>): LiveLook {
  const look = LOOKS[job]
  if (!look) throw new RangeError(`the live view does not show a ${job}`)
  return look
}
