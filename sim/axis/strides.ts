import { whole } from '../core/native.ts'
import type { Axis } from './axis.ts'
import type { Load } from './load.ts'

/**
 * The steps of an axis in one period of the current loop; `Axis.advance` says what is what. Each load asks for them itself, and by its own
 * type: so the compiler writes out in place what the load does in a step, and nothing that another one would do.
 */
export function strides<L extends Load>(
  axis: Axis,
  load: L,
  time: f64,
  voltage: f64,
  connected: bool,
  pull: f64,
  target: f64,
): void {
  const s = axis.state
  const winding = axis.winding
  const transmission = axis.transmission
  const friction = axis.friction
  const stops = axis.stops
  const commutation = axis.commutation
  const shaped: bool = axis.shaped > 0
  const constant: f64 = axis.constant
  const keeps: f64 = axis.keeps
  const onMotor: f64 = axis.linearMass * pull
  const onOutput: f64 = axis.outputMass * pull
  const kick: f64 = axis.kick
  const outputKick: f64 = axis.outputKick
  const dt: f64 = axis.step
  const steps: i32 = whole(axis.steps)
  let x: f64 = s.motorTravel
  let v: f64 = s.motorSpeed
  let travel: f64 = s.travel
  let speed: f64 = s.speed

  for (let n: i32 = 0; n < steps; n++) {
    const force: f64 = shaped ? constant * commutation.factor(x, target) : constant
    const link: f64 = transmission.force(x - travel, v - speed)
    const against: f64 = load.press(travel, speed)
    let motor: f64 = force * winding.state.current - link - friction.force(v, link) + onMotor
    if (shaped) motor += commutation.cogging(x)
    v += kick * motor
    speed += outputKick * (link - against + stops.force(travel, speed) + onOutput)
    // After the speed, as the position is: the current that pushes is the one at the step's beginning, and nothing leads.
    if (connected) winding.step(voltage - force * v, keeps)
    x += dt * v
    travel += dt * speed
    load.follow(travel, speed, time + n * dt)
  }

  s.motorTravel = x
  s.motorSpeed = v
  s.travel = travel
  s.speed = speed
}
