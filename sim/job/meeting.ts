/** How fast an output meets what stops it, and what a spring makes of that. */
import type { Scenario } from '../scenario/index.ts'
import type { Work } from './job.ts'

/** Speed of the way where the output is met [m/s or rad/s], if the way leaves it room to slow down. */
export function meetingSpeed({ approach }: Pick<Scenario, 'approach'>, { creepFrom, meets }: Work): number {
  return creepFrom < meets ? Math.min(approach.creepSpeed, approach.speed) : approach.speed
}

/** Highest force of a spring [N/m] that stops a mass [kg] at a speed [m/s], v·√(k·m); closed form, turning likewise. */
export const springImpact = (stiffness: number, mass: number, speed: number): number =>
  speed * Math.sqrt(stiffness * mass)
