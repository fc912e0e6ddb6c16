/** What has been told of a new job so far, and the scenario that comes of it. Nothing in it stems from what is on the bench. */
import { create } from 'zustand'
import { AXIS_PRESETS, type AxisPreset, type Checked, checkScenario, fitAxis, forceWindow } from '../../../sim/index.ts'

/** Keys that are asked for as figures, SI; null: nothing was given. */
export const PART_KEYS = ['part.width', 'part.mass', 'jaws.friction.static', 'part.stiffness'] as const
export const LIMIT_KEYS = ['part.markForce', 'part.yieldForce', 'part.crackForce'] as const
export type Key = (typeof PART_KEYS)[number] | (typeof LIMIT_KEYS)[number]

/** Directions in which the arm may speed up, with its acceleration [m/s²]. */
export const DIRECTIONS = ['up', 'across', 'along'] as const
export type Direction = (typeof DIRECTIONS)[number]

interface Draft {
  name: string
  figures: Partial<Record<Key, number | null>>
  /** Null: not answered yet. */
  arm: 'still' | 'moves' | null
  accelerations: Partial<Record<Direction, number | null>>
  /** Id of a generic axis. */
  axis: string | null
  /** Wanted grip force [N]; null: what the window suggests. */
  force: number | null
}

const BLANK: Draft = { name: '', figures: {}, arm: null, accelerations: {}, axis: null, force: null }

export const useDraft = create<Draft>()(() => BLANK)
export const forgetDraft = () => useDraft.setState(BLANK)

/** So much wider than the part the jaws stand open [m]. */
export const CLEARANCE = 0.02
/** Share of the static friction that is left while the part slides; common practice, no source. */
export const SLIDING = 0.8
/** Each move of the arm lasts so long, after the first started, and one follows the other after a pause [s]. */
const [FIRST_MOVE, MOVE, PAUSE, AFTER] = [0.8, 0.3, 0.1, 0.3]

export const MOVE_TIME = MOVE

/** Keys without which there is no job, in the order in which they are asked for. */
const NEEDED: Key[] = ['part.width', 'part.mass', 'jaws.friction.static']

export const missingOf = ({ figures }: Draft) => NEEDED.filter((key) => figures[key] == null)

export const armIsTold = ({ arm, accelerations }: Draft) =>
  arm === 'still' || (arm === 'moves' && DIRECTIONS.some((direction) => accelerations[direction] != null))

function movesOf({ arm, accelerations }: Draft) {
  if (arm !== 'moves') return []
  const told = DIRECTIONS.filter((direction) => accelerations[direction] != null)
  return told.map((axis, place) => ({
    axis,
    acceleration: accelerations[axis]!,
    start: Number((FIRST_MOVE + place * (MOVE + PAUSE)).toPrecision(6)),
    duration: MOVE,
  }))
}

/** The scenario without an axis of its own; what was not told takes the defaults of the format. */
export function jobOf(draft: Draft): Checked {
  const { figures, name } = draft
  const given = (key: Key) => figures[key] ?? undefined
  const width = given('part.width')
  const friction = given('jaws.friction.static')
  const moves = movesOf(draft)
  const last = moves.at(-1)
  return checkScenario({
    ...(name.trim() !== '' && { name: name.trim() }),
    part: {
      width,
      mass: given('part.mass'),
      stiffness: given('part.stiffness'),
      markForce: given('part.markForce'),
      yieldForce: given('part.yieldForce'),
      crackForce: given('part.crackForce'),
    },
    jaws: {
      ...(width !== undefined && { opening: Number((width + CLEARANCE).toPrecision(6)) }),
      ...(friction !== undefined && {
        friction: { static: friction, sliding: Number((SLIDING * friction).toPrecision(4)) },
      }),
    },
    arm: { moves },
    ...(last && { run: { duration: Math.max(1.5, Number((last.start + MOVE + AFTER).toPrecision(6))) } }),
  })
}

export interface TheWindow {
  /** Null: not known yet, or no such edge. */
  least: number | null
  most: number | null
  known: { least: boolean; most: boolean }
}

/** The force window as far as what was told makes one [N at one contact]. */
export function windowOf(draft: Draft): TheWindow {
  const known = {
    least: draft.figures['part.mass'] != null && draft.figures['jaws.friction.static'] != null,
    most: LIMIT_KEYS.some((key) => draft.figures[key] != null),
  }
  const job = jobOf(draft)
  const window = job.ok ? forceWindow(job.scenario) : { least: null, most: null }
  return { least: known.least ? window.least : null, most: known.most ? window.most : null, known }
}

/** Without an upper edge half as much again as holds, without a lower one half of what damages; common practice, no source. */
export function suggestedForce({ least, most }: TheWindow): number | null {
  const force =
    least !== null && most !== null
      ? (least + most) / 2
      : least !== null
        ? 1.5 * least
        : most !== null
          ? most / 2
          : null
  return force === null ? null : Number(force.toPrecision(3))
}

export const axisOf = (draft: Draft): AxisPreset | null => AXIS_PRESETS.find(({ id }) => id === draft.axis) ?? null

/** The whole job with its axis, gains and settings matched; null: the axis is not chosen yet. */
export function fittedJob(draft: Draft): Checked | null {
  const axis = axisOf(draft)
  const job = jobOf(draft)
  if (!axis || !job.ok) return job.ok ? null : job
  const force = draft.force ?? suggestedForce(windowOf(draft)) ?? undefined
  return fitAxis(job.scenario, axis.actuator, force)
}

/** What the format took for granted, by path. */
export const assumedPaths = (draft: Draft): string[] => [
  ...(draft.figures['part.stiffness'] == null ? ['part.stiffness'] : []),
  'jaws.layout',
  'jaws.opening',
  'jaws.friction.sliding',
  'jaws.padStiffness',
  'arm.gravity',
  'approach.speed',
]
