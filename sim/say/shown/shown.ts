/** How a job is shown to others: on the sheet that is handed over, and on a screen at the end of a table. One file a job. */
import type { JobResult, RunResult } from '../../job/job.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { Wording } from '../wording.ts'

/** A key of the file, and what it is called where its own title does not say it. */
export type Key = string | readonly [path: string, label: string]

/** A key as its reader has it: figure with unit, or a choice's words; '' if it is not set. */
export type TextAt = (path: string) => string

export interface Shown<R extends JobResult = JobResult> {
  /** One that is carried out: "The grip"; what is worked on, many of them: "parts". */
  title: string
  works: string
  /** What is held against the window, and the window itself: "Grip force", "Force window". */
  effort: string
  window: string
  /** What becomes of the work on either side of the window, and what between: "drops" below, "breaks" above, "holds". */
  below: string
  above(scenario: Scenario): string
  between: string
  /** What is to be seen in the picture: "the gripper in section". */
  picture: string
  /** What is as stiff as stated, or softer or stiffer: "a part". */
  stiff: string
  /** What goes on at a time, until the verdict is in; null: nothing is known of the run yet. */
  stage(result: RunResult<R> | null, time: number): string
  /** What went wrong, as it follows a strategy: "cracks". */
  fate(result: R): string
  /** What a strategy that is recommended brings about, and what there is to spare, a phrase for each edge. */
  achieves: string
  spare(scenario: Scenario, result: RunResult<R>, words: Wording): string[]
  /** What happens meanwhile for some time [s], in words. */
  events(scenario: Scenario): Event[]
  /** Work, tool and way in a line each. */
  facts(scenario: Scenario, words: Wording): Fact[]
  sheet: SheetWords
  /** What the work is made into, so that its effort can be taken apart to the end; '' where it stays what it is. */
  unlost: string
  /** What the simulation takes for granted of the work, in short sentences; what it does of motor and drive is `ASSUMED_OF_DRIVE`. */
  assumed(scenario: Scenario, at: TextAt): string[]
  /** What it can do to somebody, and to the work. */
  danger: string
}

export interface Event {
  start: number
  end: number
  words: string
}

export interface Fact {
  name: string
  words: string
}

/** What of the file stands on the sheet. */
interface SheetWords {
  /** What is worked on and with. */
  work: { title: string; keys: readonly Key[] }
  axis: readonly Key[]
  /** What happens meanwhile: keys, and the entries of a list, told one by one. */
  course: { title: string; keys: readonly Key[]; list: Course | null }
  /** Groups that are entered into the drive beside those of every job. */
  settings: readonly string[]
}

interface Course {
  path: string
  /** One entry, in words; and that there is none. */
  item: string
  text(at: TextAt): string
  none: string
}

/** Keys of motor, transmission and drive that matter to every job; an actuator has those of its kind. */
export const MOTOR_KEYS: readonly Key[] = [
  'actuator.transmission.lead',
  'actuator.transmission.threadFriction',
  'actuator.transmission.pinionRadius',
  'actuator.transmission.gearRatio',
  'actuator.transmission.efficiency',
  'actuator.motor.torqueConstant',
  'actuator.motor.forceConstant',
  'actuator.motor.inertia',
  'actuator.motor.movingMass',
  'actuator.transmission.carriageMass',
]
export const RATING_KEYS: readonly Key[] = [
  'actuator.transmission.coulomb',
  'actuator.transmission.breakaway',
  'actuator.motor.continuousCurrent',
  'actuator.motor.peakCurrent',
  'drive.busVoltage',
]

/** What an arm does that carries the axis along. */
export const armMoves = ({ arm }: Scenario): Event[] =>
  arm.moves.map(({ start, duration }) => ({ start, end: start + duration, words: 'arm moves' }))

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** "60 % more hold than needed": a margin over the least, in words. */
export const beyond = (margin: number | null, words: Wording, what: string): string[] =>
  margin === null ? [] : [`${words.ratio(margin)} ${what}`]

/** `up, 6 m/s² from 0.7 s for 0.36 s, jerk 300 m/s³` */
export function moveText(at: TextAt): string {
  return `${at('axis')}, ${at('acceleration')} from ${at('start')} for ${at('duration')}, jerk ${at('jerk')}`
}
