/** Groups of the file that every job has whose output turns, in place of those of one that travels: its angle in rad, its effort in N·m. */
import { standingArm } from './arm.ts'
import { turningSensors } from './sensors.ts'
import { turningServo } from './servo.ts'
import { turningStrategies } from './strategies.ts'

export const TURNING = { servo: turningServo, sensors: turningSensors, strategies: turningStrategies, arm: standingArm }
