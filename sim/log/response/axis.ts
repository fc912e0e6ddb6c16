/**
 * The axis as a frequency response, from the current that is wanted, or from the one that flows, to speed or position: motor side and output as two masses with the
 * transmission between them, viscous friction, the current loop as a lag of its bandwidth with one and a half samples of delay. Closed
 * form; friction that sticks is no part of it, so measure about a motion.
 */
import { axisOf } from '../../axis/reflect.ts'
import { jobOf } from '../../job/index.ts'
import type { Complex } from '../../loops/complex.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { ResponseInput } from './spectrum.ts'

export type Shown = 'speed' | 'position'

/** Of motor side and output [kg]. */
export const massesOf = (scenario: Scenario) => ({
  motor: axisOf(scenario.actuator).mass,
  output: jobOf(scenario).outputOf(scenario).mass,
})

/** Response at ω [rad/s] of the motor side's speed [m/s per A] or position [m per A], seen so much later [s]. */
export function axisResponse(
  scenario: Scenario,
  shown: Shown,
  delay = 0,
  input: ResponseInput = 'command',
): (omega: number) => Complex {
  const { actuator, drive } = scenario
  const { stiffness, damping, viscous } = actuator.transmission
  const { forcePerAmpere } = axisOf(actuator)
  const { motor: mass, output } = massesOf(scenario)
  const loop = input === 'command'
  const late = delay + (loop ? 1.5 / drive.currentRate : 0)
  return (omega) => {
    const link = { re: stiffness, im: damping * omega }
    // m₂ s²/(m₂ s² + d s + k): how much of the link's force the output takes.
    const taken = over(
      { re: -output * omega * omega, im: 0 },
      { re: stiffness - output * omega * omega, im: damping * omega },
    )
    const carried = times(link, taken)
    // (m₁ s² + b s)/s + link/s, each over s, so that the result is a speed.
    const drag = { re: viscous + carried.im / omega, im: mass * omega - carried.re / omega }
    const speed = over({ re: forcePerAmpere, im: 0 }, drag)
    const lag = over({ re: 1, im: 0 }, { re: 1, im: loop ? omega / drive.currentBandwidth : 0 })
    const turned = { re: Math.cos(omega * late), im: -Math.sin(omega * late) }
    const seen = times(times(speed, lag), turned)
    return shown === 'speed' ? seen : over(seen, { re: 0, im: omega })
  }
}

export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
})

export const over = (a: Complex, b: Complex): Complex => {
  const size = b.re * b.re + b.im * b.im
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size }
}
