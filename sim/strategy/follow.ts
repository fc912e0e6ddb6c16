/** The way of the output that every strategy shares, and the position loop of the servo, from the scenario. */
import { isOpenLoop } from '../axis/reflect.ts'
import type { Course } from '../control/course.ts'
import type { PositionPid } from '../control/position-pid.ts'
import type { Work } from '../job/job.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Follower } from './follower.ts'
import type { Move } from './move.ts'

/** Profile to `overtravel` beyond first touch of the nominal work, but not past the stroke. */
export function fillApproach(course: Course, { approach }: Pick<Scenario, 'approach'>, work: Work): void {
  course.end = Math.min(work.touch + approach.overtravel, work.stroke)
  course.speed = approach.speed
  course.acceleration = approach.acceleration
  course.jerk = approach.jerk
  course.creepSpeed = approach.creepSpeed
  course.creepFrom = work.creepFrom
}

/** The position loop of the servo, with its output limited by the servo's own limit. */
export function fillPosition(loop: PositionPid, { servo }: Pick<Scenario, 'servo'>): void {
  const period = 1 / servo.rate
  loop.setPi(servo.kp, servo.ki, period)
  loop.kd = servo.kd
  loop.leftOut = servo.kp * (1 - servo.setpointWeights.proportional)
  loop.derivativeWeight = servo.setpointWeights.derivative
  loop.velocityFeedforward = servo.velocityFeedforward
  loop.accelerationFeedforward = servo.accelerationFeedforward
  loop.slope.set(servo.speedFilter, period)
  loop.limit = servo.currentLimit
}

export function fillFollower(follower: Follower, scenario: Scenario, work: Work): void {
  follower.openLoop = isOpenLoop(scenario) ? 1 : 0
  fillApproach(follower.course, scenario, work)
  fillPosition(follower.loop, scenario)
}

/** A move is made with the speeds of the approach, without its creep zone. */
export function fillMove({ follower }: Move, scenario: Scenario, work: Work): void {
  fillFollower(follower, scenario, work)
  follower.course.end = 0
  follower.course.creepSpeed = scenario.approach.speed
  follower.course.creepFrom = Number.POSITIVE_INFINITY
}
