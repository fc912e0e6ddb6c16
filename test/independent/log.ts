/** A log of an axis in free air, integrated anew: a mass on its bristles, a winding, a drive, and a recorder that is late, coarse and noisy. */

import { CurrentLoop, Encoder, Servo } from './drive.ts'
import { AxisFriction } from './friction.ts'
import type { Input } from './input.ts'

export interface LoggedAxis {
  mass: number
  /** [N/A] */
  constant: number
  resistance: number
  inductance: number
  friction: Input['friction']
  drive: Input['drive']
  servo: Input['servo']
}

export interface Recorder {
  /** Rows a second, and by how much they are late [s]. */
  rate: number
  late: number
  /** Rms noise of the current [A], steps of current [A] and position [m]. */
  noise: number
  currentStep: number
  positionStep: number
  /** Standard normal numbers. */
  normal(): number
}

/** Place, speed and acceleration wanted at a time [s]. */
export type Way = (time: number) => { travel: number; speed: number; acceleration: number }

/** Explicit midpoint rule in steps of a hundredth of the current loop's period. */
const STEPS = 20

/** Where the axis is and what flows, at every sample of the current loop [s, m, A]. */
export interface Moved {
  period: number
  duration: number
  dense: { time: number; x: number; i: number }[]
}

export function moved(axis: LoggedAxis, way: Way, duration: number): Moved {
  const { mass, constant, resistance, inductance, drive, servo } = axis
  const friction = new AxisFriction({ friction: axis.friction, axis: { mass } as Input['axis'] })
  const input = { drive, motor: { resistance, inductance }, axis: { forceConstant: constant } } as Input
  const current = new CurrentLoop(input)
  const loop = new Servo(servo)
  const encoder = new Encoder(servo)
  const perServo = Math.round(servo.period / drive.period)
  const h = drive.period / STEPS
  let [x, v, z, i, command, voltage, next] = [0, 0, 0, 0, 0, 0, 0]
  const dense: { time: number; x: number; i: number }[] = []
  const rates = (v: number, z: number, i: number) => {
    friction.at(z, v)
    const rate = friction.rate
    return {
      v: (constant * i - friction.force) / mass,
      z: rate,
      i: (voltage - resistance * i - constant * v) / inductance,
    }
  }
  const samples = Math.round(duration / drive.period)
  for (let k = 0; k <= samples; k++) {
    const time = k * drive.period
    if (k % perServo === 0) {
      encoder.take(x)
      command = loop.take(way(time), encoder, servo.limit)
    }
    voltage = next
    next = current.take(command, i, encoder.speed)
    dense.push({ time, x, i: i + drive.offset })
    for (let n = 0; n < STEPS; n++) {
      const a = rates(v, z, i)
      const b = rates(v + (h / 2) * a.v, z + (h / 2) * a.z, i + (h / 2) * a.i)
      x += h * (v + (h / 2) * a.v)
      v += h * b.v
      z += h * b.z
      i += h * b.i
    }
  }
  return { period: drive.period, duration, dense }
}

/** Columns of the log of a move: time [s], reference and position [m], current [A]. */
export function logged({ period, duration, dense }: Moved, way: Way, recorder: Recorder) {
  const rows = Math.floor((duration - recorder.late) * recorder.rate)
  const at = (time: number) => {
    const place = Math.max(0, time / period)
    const from = Math.min(dense.length - 2, Math.floor(place))
    const share = place - from
    const [a, b] = [dense[from]!, dense[from + 1]!]
    return { x: a.x + share * (b.x - a.x), i: a.i + share * (b.i - a.i) }
  }
  const step = (value: number, size: number) => (size > 0 ? size * Math.round(value / size) : value)
  const log = Array.from({ length: rows }, (_, k) => {
    const time = k / recorder.rate
    const seen = at(time - recorder.late)
    return {
      time,
      target: way(time).travel,
      position: step(seen.x, recorder.positionStep),
      current: step(seen.i + recorder.noise * recorder.normal(), recorder.currentStep),
    }
  })
  const column = (name: 'time' | 'target' | 'position' | 'current') => Float64Array.from(log, (row) => row[name])
  return { time: column('time'), target: column('target'), motorTravel: column('position'), current: column('current') }
}
