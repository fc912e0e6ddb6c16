import type { FieldLoop } from '../control/field-loop.ts'
import type { PositionPid } from '../control/position-pid.ts'
import type { Scenario } from '../scenario/index.ts'
import { Course, type Start } from './course.ts'
import { handOver, positionLoop } from './follow.ts'
import type { Measured, Strategy } from './strategy.ts'

/** Moves the jaws to a travel and holds them there: opens them on purpose, or keeps them where they stand. */
export class Move implements Strategy {
  target: number
  wantedSpeed = 0
  readonly engaged = Number.NaN
  private readonly course: Course
  private readonly loop: PositionPid | FieldLoop

  /** To `end` [m], with the speeds of the approach. */
  constructor(scenario: Scenario, start: Start, end: number) {
    const { speed, acceleration, jerk } = scenario.approach
    this.course = new Course({ end, speed, acceleration, jerk }, start)
    this.loop = positionLoop(scenario, scenario.servo.currentLimit)
    this.target = start.travel
  }

  /** Where it ends [m]. */
  get end() {
    return this.course.way.end
  }

  get saturated() {
    return this.loop.saturated
  }

  get measuredSpeed() {
    return this.loop.measuredSpeed
  }

  tick({ time, position }: Measured): number {
    const { course } = this
    course.at(time)
    this.target = course.position
    this.wantedSpeed = course.speed
    return this.loop.tick(course.position, course.speed, course.acceleration, position)
  }

  take(previous: Strategy): void {
    if (!(previous instanceof Move)) return
    this.course.take(previous.course)
    this.target = previous.target
    this.wantedSpeed = previous.wantedSpeed
    handOver(previous.loop, this.loop)
  }
}
