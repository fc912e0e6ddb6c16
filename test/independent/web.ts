/**
 * A roll under a constant torque that winds a web from a line, integrated anew from the equations: relaxed length in the span, speed of the
 * roll, length wound. Roll and rotor are one body; nothing rubs. Without a line of the simulator.
 */
import { Solver } from 'odex'

export interface WoundWeb {
  /** E·A [N], span [m], strain with which the web comes, damping time [s]. */
  stiffness: number
  length: number
  entry: number
  damping: number
  /** Radius and core [m], ½·π·ρ·w [kg/m²], thickness [m], inertia of all else that turns [kg·m²]. */
  radius: number
  core: number
  perRadius: number
  thickness: number
  inertia: number
  /** [N·m] */
  torque: number
  /** Speed of the line at a time [m/s]. */
  line(time: number): number
}

/** Tension at times [s] in rising order, from rest under the torque at the first of them. */
export function tensions(web: WoundWeb, times: readonly number[]): number[] {
  const at = (time: number, [relaxed, speed, wound]: number[]) => {
    const radius = Math.sqrt(web.radius ** 2 + (web.thickness * wound!) / Math.PI)
    const rim = speed! * radius
    const flow = web.line(time) / (1 + web.entry) - (rim * relaxed!) / web.length
    const tension = web.stiffness * (web.length / relaxed! - 1 - (web.damping * flow) / web.length)
    const inertia = web.inertia + web.perRadius * (radius ** 4 - web.core ** 4)
    return { flow, tension, slope: (web.torque - tension * radius) / inertia, taken: (rim * relaxed!) / web.length }
  }
  const solver = new Solver(3)
  solver.relativeTolerance = 1e-9
  solver.absoluteTolerance = 1e-10
  solver.maxSteps = 1e6
  const strain = web.torque / web.radius / web.stiffness
  let state = [web.length / (1 + strain), 0, 0]
  let now = times[0]!
  return times.map((time) => {
    if (time > now) {
      const begin = now
      state = solver.solve(
        (x, y) => {
          const { flow, slope, taken } = at(begin + x, y)
          return [flow, slope, taken]
        },
        0,
        state,
        time - begin,
      ).y
      now = time
    }
    return at(time, state).tension
  })
}
