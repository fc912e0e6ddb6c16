/** What a drawing of an actuator family has to give. A new family is one file and one line in the registry. */
import type { ReactNode } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import type { Plan } from '../grip/plan.ts'

/** Where everything is at an instant, in the picture's pixels. */
export interface Motion {
  /** Travel of the jaw, and of the motor side before the transmission has given way [px]. */
  travel: number
  motorTravel: number
  /** Angle of the rotor, and of screw or pinion where they turn differently [rad]; 0 for a linear motor. */
  rotor: number
  output: number
  /** Current over the motor's peak current, −1 to 1. */
  current: number
}

export interface DrawingProps {
  plan: Plan
  scenario: Scenario
}

/** A point of the drawing that carries a name; x, y in pixels about the plan's origin, moving with the jaws if `rides`. */
export interface Label {
  text: string
  x: number
  y: number
  rides?: 'driven' | 'far'
}

/** Level and height of a slot [px]. */
export interface Slot {
  y: number
  height: number
}

export interface Slots {
  driven?: Slot | undefined
  far?: Slot | undefined
}

export interface FamilyDrawing {
  /** Length of the drive unit left of the gripper's end wall, in units of the plan. */
  length(scenario: Scenario): number
  /** Slots in the jaw blocks through which the other jaw's rack passes. */
  slots?(props: DrawingProps): Slots
  /** What stands still, behind the jaws. */
  Fixed(props: DrawingProps): ReactNode
  /** What moves: drawn over the jaws. */
  Moving(props: DrawingProps & { motion: Motion }): ReactNode
  labels(props: DrawingProps): Label[]
}
