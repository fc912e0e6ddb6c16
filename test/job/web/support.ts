/** Webs of the tests: a span whose roll is turned as a test says, and whole runs on an axis without losses. */
import { Arm } from '../../../sim/axis/arm.ts'
import { core } from '../../../sim/cli/core.ts'
import { numbers } from '../../../sim/core/native.ts'
import { checkScenario, faultLine, type Scenario } from '../../../sim/index.ts'
import { WebLoad } from '../../../sim/job/web/load.ts'
import type { WebJudgement } from '../../../sim/job/web/result.ts'
import { simulate } from '../../../sim/run/simulate.ts'
import { merge, type Tree } from '../../checks/support.ts'

export function webOf(...parts: Tree[]): Scenario {
  const base = { job: 'web', actuator: { kind: 'spindle' } }
  const checked = checkScenario(parts.map((part) => structuredClone(part)).reduce(merge, base))
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

const ARM = new Arm()
const STEP = 1e-4

/** A span at a line that runs at a speed [m/s] for ever; what of its constants a test gives. */
export class Span {
  readonly load = new WebLoad()
  time = 0
  angle = 0

  constructor(lineSpeed: number, constants: Partial<WebLoad>, drawn = 0) {
    const { load } = this
    Object.assign(load, constants)
    load.line.phases = numbers(5)
    load.line.phases.set([0, 0, lineSpeed, 0, 0])
    load.line.count = 1
    load.state.drawn = drawn
    load.setStep(STEP)
    load.period = STEP
    load.settle()
  }

  /** Turns the roll at the speeds [rad/s] that a function of time gives until `end` [s], and tells each step. */
  turn(end: number, speed: (time: number) => number, tell: (tension: number, time: number) => void = () => {}): number {
    const { load } = this
    while (this.time < end - STEP / 2) {
      load.begin(this.time, ARM, false)
      load.press(this.angle, speed(this.time))
      this.angle += STEP * speed(this.time + STEP / 2)
      load.follow(this.angle, speed(this.time + STEP / 2), this.time)
      load.end(this.time, false)
      this.time += STEP
      tell(load.state.tension, this.time)
    }
    load.press(this.angle, speed(this.time))
    return load.state.tension
  }
}

/** An axis without friction, cogging, noise and steps, on a light shaft; idlers without drag; radius that stays. */
export const IDEAL: Tree = {
  actuator: {
    motor: {
      resistance: 0.5,
      inductance: 0.001,
      torqueConstant: 1,
      inertia: 0.001,
      continuousCurrent: 100,
      peakCurrent: 100,
      cogging: { amplitude: 0 },
    },
    transmission: {
      gearRatio: 1,
      efficiency: 1,
      inertia: 0,
      coulomb: 0,
      breakaway: 0,
      viscous: 0,
      bristleStiffness: 1,
      stiffness: 50_000,
      damping: 20,
    },
  },
  web: { width: 1, thickness: 12e-6, modulus: 4.4e9, damping: 0.01, slack: 0.001 },
  span: { length: 2 },
  idlers: { mass: 0.001, coulomb: 0, breakaway: 0, viscous: 0 },
  line: { ramps: [] },
  roll: { kind: 'draws', radius: 0.1, inertia: 0.05 },
  window: { least: 1, most: 1000, from: 1 },
  drive: { busVoltage: 400, currentResolution: 0, currentNoise: 0 },
  servo: { kp: 500, ki: 0, kd: 5, speedFilter: 0.0005, currentLimit: 90 },
  sensors: { encoder: { resolution: 0 }, gauge: { noise: 0, resolution: 0, bandwidth: 3000 } },
  approach: { speed: 0.2, acceleration: 2, jerk: 50, overtravel: 1 },
  strategies: {
    currentClamp: { limit: 5 },
    sensedForce: {
      target: 50,
      contactForce: 1,
      kp: 0.004,
      ki: 0.01,
      deadband: 0,
      speedLimit: 5,
      velocity: { kp: 4, ki: 40 },
    },
  },
}

export const pulled = (scenario: Scenario, strategy: 'current-clamp' | 'sensed-force' = 'current-clamp') =>
  simulate<WebJudgement>(scenario, strategy, { core })

/** Mean of a trace between two times [s]. */
export function meanBetween(traces: { time: Float64Array }, id: string, from: number, to: number): number {
  const column = (traces as unknown as Record<string, Float64Array>)[id]!
  const rows = [...traces.time.keys()].filter((n) => traces.time[n]! >= from && traces.time[n]! <= to)
  return rows.reduce((sum, n) => sum + column[n]!, 0) / rows.length
}
