/** Closures of the tests: an ideal head, and a load that is turned by hand. */
import { checkScenario, editScenario, faultLine, type Scenario } from '../../../sim/index.ts'
import { cap } from '../../../sim/job/cap/index.ts'
import { CapLoad } from '../../../sim/job/cap/load.ts'
import { merge, type Tree } from '../../checks/support.ts'

export function capOf(...parts: Tree[]): Scenario {
  const checked = checkScenario(parts.map((part) => structuredClone(part)).reduce(merge, { job: 'cap' }))
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

export function editedBy(scenario: Scenario, edits: Record<string, unknown>): Scenario {
  const checked = editScenario(
    scenario,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

/** A motor and a head without friction, noise and steps; the closure's thread runs freely, its liner does not creep. */
export const IDEAL: Tree = {
  actuator: {
    motor: { torqueConstant: 0.1, inertia: 2e-5, inductance: 0.001, peakCurrent: 60, continuousCurrent: 60 },
    transmission: {
      inertia: 0,
      coulomb: 0,
      breakaway: 0,
      viscous: 0,
      bristleStiffness: 0.001,
      stiffness: 2e4,
      damping: 0.1,
    },
  },
  drive: { busVoltage: 400, currentResolution: 0, currentNoise: 0 },
  sensors: { encoder: { resolution: 0 }, gauge: { noise: 0, resolution: 0 } },
  servo: { kp: 20, ki: 0, kd: 0.1, currentLimit: 60 },
  closure: { inertia: 1e-5, runDown: 0, engagement: 1, stiffness: 1e5 },
  liner: { relaxing: 0 },
  chuck: { inertia: 2e-5, stiffness: 2e4, damping: 0.2, startAngle: 1, topLoad: 0 },
  window: { torque: { least: 0.01 } },
  strategies: { thresholdStop: { threshold: 59 }, currentClamp: { limit: 60 } },
}

/** A thread of 8 turns an inch, mean diameter 26.2 mm, flank 10°, its face at 12 mm; one coefficient for both. */
export const EIGHT_PER_INCH = (friction: number): Tree => ({
  closure: {
    lead: 0.003175,
    meanDiameter: 0.0262,
    flankAngle: Math.PI / 18,
    threadFriction: friction,
    faceRadius: 0.012,
    faceFriction: friction,
  },
})

/** A load that is turned at its chuck by a hand that nothing stops; angles in rad, `rate` in rad/s. */
export class Hand {
  readonly load = new CapLoad()
  private angle = 0
  private time = 0
  private readonly step: number

  constructor(scenario: Scenario, step = 2e-6) {
    this.step = step
    cap.fill(this.load, scenario)
    this.load.setStep(step)
    this.load.settle()
  }

  /** Turns on to an angle, or back to it; what the thread resists with then [N·m]. */
  to(angle: number, rate: number): number {
    const way = Math.sign(angle - this.angle) * rate
    while ((angle - this.angle) * way > 0) this.go(way)
    return this.load.state.thread
  }

  /** Stands for so long [s]. */
  wait(time: number): void {
    const end = this.time + time
    while (this.time < end) this.go(0)
  }

  private go(rate: number): void {
    this.load.press(this.angle, rate)
    this.angle += rate * this.step
    this.load.follow(this.angle, rate, this.time)
    this.time += this.step
  }
}
