/** What a job says to the loops: one file each, and one line in `index.ts`. */
import type { Load } from '../../axis/load.ts'
import type { LineFollower } from '../../control/line-follower.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { PlantModel } from '../axis-plant.ts'

/**
 * Where the axis is looked at. Every job has `free`, before it touches anything, and `softest`, `nominal` and `stiffest`, at rest at the
 * working effort; the others are those of some: `sliding` and `resting` in a joint or on a liner, `relaxed` once a part has given way,
 * `running` with the line.
 */
export type WorkingPointId = 'free' | 'sliding' | 'resting' | 'softest' | 'nominal' | 'stiffest' | 'relaxed' | 'running'

/** What the axis presses on, linear about the working effort. Units are those of an output that travels; where it turns read radians. */
export interface Contact {
  /** Effort for each metre: of a grip at one contact and for its squeeze, of others for the way of the output [N/m]. */
  stiffness: number
  /** Likewise [N·s/m]. */
  damping: number
  /** What slow changes meet, once the work has given way to them [N/m]. */
  slow: number
  /** What the output meets for each metre of its own travel, all contacts together [N/m; N·m/rad]. */
  against: number
  /** Time constant with which a stretch leaves with the work [s]; left out: it stays. */
  forgets?: number
  /** Friction of the work has a part in it: it holds elastically at rest, or slides. */
  grips?: 'holds' | 'slides'
}

export interface WorkingPoint {
  id: WorkingPointId
  label: string
  /** Stiffness of what is pressed on over that of the scenario. */
  factor: number
  /** Effort there [N or N·m, as the gauge measures it]; 0 where there is nothing to touch. */
  force: number
  /** Travel of the output [m or rad], and the speed with which it passes [m/s or rad/s]. */
  travel: number
  speed: number
  /** By how much the effort may swing before the work answers otherwise than in proportion. */
  room: number
  contact: Contact | null
}

/** What the work would not stand, and at which effort that lies [N or N·m]. */
export interface WorkLimit {
  kind: 'cracks' | 'yields' | 'bruises' | 'strips' | 'tears'
  force: number
}

/** Where a trial left what the linear model of the work knows: it lost touch, broke, or its friction gave way. */
export type WorkBound = 'contact' | 'part' | 'slides'

/** `Worked` is its half in the compiled core, a type only, as for `Job`. */
export interface JobLoops<Worked extends Load = Load> {
  /** Working points that a scenario has, in the order of tables. */
  points(scenario: Scenario): readonly WorkingPointId[]
  /** With all that gives under the effort so many times as stiff. */
  stiffened(scenario: Scenario, factor: number): Scenario
  /** `scenario` is stiffened by `factor`; `force` is the working effort. */
  point(scenario: Scenario, id: WorkingPointId, force: number): Omit<WorkingPoint, 'id' | 'factor'>
  /** `scenario` is that of the point. */
  plant(scenario: Scenario, point: WorkingPoint): PlantModel
  /** The limit of the work that the effort of a point is not below; null: none. */
  limit(scenario: Scenario, point: WorkingPoint): WorkLimit | null
  /** What the work pulls the output back with there [N; N·m where it turns]. */
  pull(scenario: Scenario, point: WorkingPoint): number
  /** Speed of the line that the output follows there, as the drive reckons with it [m/s or rad/s]. */
  lineSpeed?(scenario: Scenario, point: WorkingPoint): number
  /** Puts the work there, in balance, for a trial of a loop, and what the drive follows with it. */
  setDown(load: Worked, scenario: Scenario, point: WorkingPoint, follower: LineFollower): void
  /** What the work has met by now that its linear model does not know. */
  met(load: Worked, point: WorkingPoint): readonly WorkBound[]
  /** Without the dry friction that its linear model leaves out. */
  calm(scenario: Scenario): Scenario
}
