/**
 * The current loop with the servo around it against a march through time that shares no code with the linear loops: the same axis
 * written out by hand, winding and two masses by matrix exponential, both controllers as their difference equations.
 */
import { Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import type { Scenario } from '../../sim/index.ts'
import { Cascade } from '../../sim/loops/cascade.ts'
import { examine } from '../../sim/loops/examine.ts'
import { MultirateResponse, multirateStep } from '../../sim/loops/multirate.ts'
import { plantModel } from '../../sim/loops/plant.ts'
import { type WorkingPointId, workingPoint } from '../../sim/loops/working-point.ts'
import { bin, ratio, ripple } from './signals.ts'
import { expm, IDEAL, scenarioOf } from './support.ts'

const SCREW = scenarioOf(IDEAL, {
  actuator: { kind: 'screw' },
  servo: { rate: 4000, kp: 7500, ki: 90000, kd: 45, speedFilter: 0.0003 },
  drive: { currentRate: 20000 },
})
/** A servo at a tenth of the current loop's rate, half a feed-forward, a light axis. */
const COIL = scenarioOf(IDEAL, {
  actuator: {
    kind: 'direct',
    motor: { resistance: 3.4, inductance: 0.0011, forceConstant: 11, movingMass: 0.085 },
    transmission: { carriageMass: 0.09, viscous: 3, stiffness: 3e6, damping: 60 },
  },
  jaws: { mass: 0.045 },
  drive: { currentRate: 20000, currentBandwidth: 6000, backEmfFeedforward: 0.5 },
  servo: { rate: 2000, kp: 2800, ki: 60000, kd: 11, speedFilter: 0.0004 },
})

interface March {
  scenario: Scenario
  id: WorkingPointId
  samples: number
  /** Factor on the current gains; what is added to the current error; what is added to the command. */
  gain?: number
  added?: (sample: number) => number
  command?: number
  servo?: boolean
}

/** Current error with what is added to it, and current, at every sample. */
function march({ scenario, id, samples, gain = 1, added = () => 0, command = 0, servo = true }: March) {
  const { drive, servo: gains, actuator } = scenario
  const point = workingPoint(scenario, id)
  const { forceConstant: k, resistance: r, mass, jawMass } = plantModel(scenario, point)
  const { inductance: l } = actuator.motor
  const { stiffness: s, damping: d, viscous: b } = actuator.transmission
  const [kc, dc] = [2 * (point.contact?.stiffness ?? 0), 2 * (point.contact?.damping ?? 0)]
  const period = 1 / drive.currentRate
  // Current, motor speed, stretch, jaw speed, jaw travel, voltage.
  const step = expm(
    Matrix.mul(
      new Matrix([
        [-r / l, -k / l, 0, 0, 0, 1 / l],
        [k / mass, -(b + d) / mass, -s / mass, d / mass, 0, 0],
        [0, 1, 0, -1, 0, 0],
        [0, d / jawMass, s / jawMass, -(d + dc) / jawMass, -kc / jawMass, 0],
        [0, 0, 0, 1, 0, 0],
        [0, 0, 0, 0, 0, 0],
      ]),
      period,
    ),
  ).to2DArray()
  const nominal = actuator.motor
  const bandwidth = drive.currentBandwidth * gain
  const [kp, ki] = [nominal.inductance * bandwidth, nominal.resistance * bandwidth * period]
  const motor = plantModel(scenario, workingPoint(scenario, 'free')).forceConstant
  const emf = drive.backEmfFeedforward * motor
  const every = Math.round(drive.currentRate / gains.rate)
  const t = 1 / gains.rate
  let x = [0, 0, 0, 0, 0, 0]
  let [voltage, integral, speed, travel, servoIntegral, wanted] = [0, 0, 0, 0, 0, 0]
  const given: number[] = []
  const got: number[] = []
  const current: number[] = []
  for (let n = 0; n < samples; n++) {
    if (n % every === 0) {
      const at = x[4]! + x[2]!
      speed += (t / (gains.speedFilter + t)) * ((at - travel) / t - speed)
      travel = at
      wanted = command
      if (servo) {
        wanted += (gains.kp + (gains.ki * t) / 2) * -at + servoIntegral - gains.kd * speed
        servoIntegral -= gains.ki * t * at
      }
    }
    const error = wanted - x[0]!
    const into = error + added(n)
    given.push(error)
    got.push(into)
    current.push(x[0]!)
    const acts = voltage
    voltage = (kp + ki / 2) * into + integral + emf * speed
    integral += ki * into
    x[5] = acts
    x = step.map((row) => row.reduce((sum, weight, j) => sum + weight * x[j]!, 0))
  }
  return { given, got, current }
}

const CASES: [string, Scenario, WorkingPointId][] = [
  ['screw in free air', SCREW, 'free'],
  ['screw on the part', SCREW, 'nominal'],
  ['coil in free air', COIL, 'free'],
  ['coil on the part', COIL, 'stiffest'],
]

describe.each(CASES)('%s', (_, scenario, id) => {
  const cascade = new Cascade(scenario, workingPoint(scenario, id))

  it('a sine added to the current error comes back as L says', () => {
    const response = new MultirateResponse(cascade.currentLoop())
    // A window of whole servo periods and whole cycles, after as long again to settle.
    const window = 8000
    for (const cycles of [40, 120, 333, 900, 1700, 2700, 3900]) {
      const angle = (2 * Math.PI * cycles) / window
      const { given, got } = march({ scenario, id, samples: 3 * window, added: (n) => Math.cos(angle * n) })
      const measured = ratio(bin(got, window, cycles), bin(given, window, cycles))
      response.at(angle)
      const predicted = ratio({ re: -1, im: 0 }, { re: response.re, im: response.im })
      expect(Math.abs(measured.decibels - predicted.decibels), `${cycles} cycles`).toBeLessThan(1e-3)
      const turn = measured.degrees - predicted.degrees
      expect(Math.abs(turn - 360 * Math.round(turn / 360)), `${cycles} cycles`).toBeLessThan(0.01)
    }
  })

  it('starts to oscillate just where the gain margins say', () => {
    const { margins } = examine(cascade, 'current')
    for (const margin of [margins.gainMargin!, margins.lowerGainMargin!]) {
      const grows = (share: number) => {
        const gain = 10 ** (margin / 20) * share
        const { given } = march({ scenario, id, samples: 60000, gain, added: (n) => (n === 0 ? 1 : 0) })
        return ripple(given.slice(-10000)) / ripple(given.slice(20000, 30000))
      }
      const outwards = margin > 0 ? 1.01 : 1 / 1.01
      expect(grows(1 / outwards)).toBeLessThan(0.9)
      expect(grows(outwards)).toBeGreaterThan(1.1)
    }
  })

  it('steps as predicted with the servo’s command held', () => {
    const value = multirateStep(cascade.currentLoop(false), 400)
    const { current } = march({ scenario, id, samples: 400, command: 1, servo: false })
    for (const [n, each] of current.entries()) expect(Math.abs(value[n]! - each)).toBeLessThan(1e-9)
  })
})
