/** The approach of a scenario, planned outside a run. */
import { Course } from '../control/course.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { fillApproach } from './follow.ts'

/** The approach from open jaws at time 0. */
export function approachCourse(scenario: Scenario): Course {
  const course = new Course()
  fillApproach(course, scenario, jobOf(scenario).workOf(scenario))
  course.setOut(0, 0)
  return course
}

/** Where the approach ends [m]. */
export const approachEnd = (scenario: Scenario): number => approachCourse(scenario).end
