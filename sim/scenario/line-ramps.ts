/** How long a ramp of limited jerk takes, as the rules of the file and the line itself both need it. */

/** [s], [m/s], [m/s²], [m/s³] */
export interface LineRamp {
  start: number
  speed: number
  acceleration: number
  jerk: number
}

/** When a ramp from a speed [m/s] on is over [s]; closed form of the quickest change of speed from rest of acceleration to rest. */
export function rampEnd({ start, speed, acceleration, jerk }: LineRamp, from: number): number {
  const change = Math.abs(speed - from)
  const reached = change * jerk >= acceleration * acceleration
  return start + (reached ? change / acceleration + acceleration / jerk : 2 * Math.sqrt(change / jerk))
}
