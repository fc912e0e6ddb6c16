/**
 * A closure turned on by a motor under constant current, integrated anew from the equations and without a line of sim: three inertias with
 * springs between them, friction of a sliding thread in closed form, a liner of spring and Maxwell branch, the current as a first-order lag.
 * Runge and Kutta's method of fourth order in small steps; up to the highest torque everything turns one way, so friction has one sign.
 */
import { describe, expect, it } from 'vitest'
import type { Scenario } from '../../sim/index.ts'
import type { CapJudgement } from '../../sim/job/cap/result.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { capOf } from '../job/cap/support.ts'
import type { Tree } from './support.ts'

/** The plant in plain numbers [SI]. */
interface Plant {
  current: number
  bandwidth: number
  constant: number
  ratio: number
  efficiency: number
  inertias: [motor: number, chuck: number, closure: number]
  friction: number
  viscous: number
  link: [stiffness: number, damping: number]
  chuck: [stiffness: number, damping: number]
  start: number
  seat: number
  runDown: number
  thread: { lead: number; diameter: number; flank: number; friction: number }
  face: { radius: number; friction: number }
  liner: { stiffness: number; relaxing: number; time: number }
  top: { load: number; rate: number }
  jam: { at: number; rate: number } | null
}

const PLANT: Plant = {
  current: 6.5,
  bandwidth: 5000,
  constant: 0.12,
  ratio: 5,
  efficiency: 0.9,
  inertias: [25 * 3e-5 + 4e-5, 1.5e-4, 8e-6],
  friction: 0.1,
  viscous: 0.002,
  link: [1500, 0.15],
  chuck: [120, 0.03],
  start: 0.6,
  seat: 2.1,
  runDown: 0.15,
  thread: { lead: 0.0042, diameter: 0.06, flank: 0.2, friction: 0.18 },
  face: { radius: 0.028, friction: 0.22 },
  liner: { stiffness: 4e5, relaxing: 0.3, time: 0.05 },
  top: { load: 40, rate: 3000 },
  jam: null,
}

/** The same as a file. */
const scenarioOf = (p: Plant): Scenario => {
  const rotor = p.inertias[0] / p.ratio ** 2
  const tree: Tree = {
    actuator: {
      motor: { torqueConstant: p.constant, inertia: rotor, inductance: 0.001, peakCurrent: 60, continuousCurrent: 60 },
      transmission: {
        gearRatio: p.ratio,
        efficiency: p.efficiency,
        inertia: 0,
        coulomb: p.friction,
        breakaway: p.friction,
        viscous: p.viscous,
        bristleStiffness: 1000,
        stiffness: p.link[0],
        damping: p.link[1],
      },
    },
    drive: { busVoltage: 400, currentBandwidth: p.bandwidth, currentResolution: 0, currentNoise: 0 },
    sensors: { encoder: { resolution: 0 }, gauge: { noise: 0, resolution: 0 } },
    servo: { kp: 1e5, ki: 0, kd: 0, currentLimit: 60 },
    closure: {
      inertia: p.inertias[2],
      lead: p.thread.lead,
      meanDiameter: p.thread.diameter,
      flankAngle: p.thread.flank,
      threadFriction: p.thread.friction,
      faceRadius: p.face.radius,
      faceFriction: p.face.friction,
      runDown: p.runDown,
      engagement: p.seat - p.start,
      stiffness: 6000,
      misstart: p.jam && { after: p.jam.at - p.start, stiffness: p.jam.rate },
    },
    liner: { stiffness: p.liner.stiffness, relaxing: p.liner.relaxing, relaxationTime: p.liner.time },
    chuck: {
      inertia: p.inertias[1],
      stiffness: p.chuck[0],
      damping: p.chuck[1],
      startAngle: p.start,
      topLoad: p.top.load,
      topRate: p.top.rate,
    },
    approach: { speed: 1000, acceleration: 1e5, jerk: 1e9, overtravel: 20 },
    strategies: { currentClamp: { limit: p.current } },
    run: { duration: 0.4 },
  }
  return capOf(tree)
}

/** Torque that the thread takes while it turns on [N·m], under a preload of the liner [N] at an angle [rad]. */
function threadTorque(p: Plant, angle: number, preload: number): number {
  if (angle < p.start) return 0
  const { lead, diameter, flank, friction } = p.thread
  const lambda = Math.atan(lead / (Math.PI * diameter))
  const phi = Math.atan(friction / Math.cos(flank))
  const on = (diameter / 2) * Math.tan(phi + lambda)
  const helped = (diameter / 2) * Math.tan(phi - lambda)
  const down = (lead / (2 * Math.PI)) * (angle - p.start)
  const top = Math.max(0, p.top.load - p.top.rate * down)
  const jam = p.jam && angle > p.jam.at ? (p.jam.rate * (angle - p.jam.at)) / on : 0
  const load = preload + jam - top
  return p.runDown + p.face.friction * p.face.radius * preload + (load > 0 ? load * on : -load * helped)
}

/** Angles and speeds of motor side, chuck and closure, the creeping part of the preload, the current. */
type State = number[]

function rates(p: Plant, [m = 0, vm = 0, h = 0, vh = 0, k = 0, vk = 0, creeping = 0, current = 0]: State): State {
  const perRadian = p.thread.lead / (2 * Math.PI)
  const squeeze = perRadian * Math.max(0, k - p.seat)
  const preload = (1 - p.liner.relaxing) * p.liner.stiffness * squeeze + creeping
  const link = p.link[0] * (m - h) + p.link[1] * (vm - vh)
  const held = p.chuck[0] * (h - k) + p.chuck[1] * (vh - vk)
  const lost = (1 / p.efficiency - 1) * Math.abs(link)
  const push = p.constant * p.ratio * current - link - lost - p.friction - p.viscous * vm
  const squeezing = k > p.seat ? perRadian * vk : 0
  return [
    vm,
    (vm <= 0 && push < 0 ? 0 : push) / p.inertias[0],
    vh,
    (link - held) / p.inertias[1],
    vk,
    (held - threadTorque(p, k, preload)) / p.inertias[2],
    p.liner.relaxing * p.liner.stiffness * squeezing - creeping / p.liner.time,
    p.bandwidth * (p.current - current),
  ]
}

const STEP = 2e-6

/** Until the closure stands for the first time: highest torque of the thread, when the liner or jam was met and how fast, angle there. */
function integrate(p: Plant) {
  let y: State = [0, 0, 0, 0, 0, 0, 0, 0]
  const end = { torque: 0, met: Number.NaN, speed: 0, angle: 0 }
  const meets = Math.min(p.seat, p.jam?.at ?? Infinity)
  const along = (by: State, share: number) => y.map((value, n) => value + share * STEP * by[n]!)
  for (let t = 0; t < 0.4; t += STEP) {
    const a = rates(p, y)
    const b = rates(p, along(a, 0.5))
    const c = rates(p, along(b, 0.5))
    const d = rates(p, along(c, 1))
    y = y.map((value, n) => value + (STEP / 6) * (a[n]! + 2 * b[n]! + 2 * c[n]! + d[n]!))
    const [, , , , angle = 0, speed = 0, creeping = 0] = y
    if (Number.isNaN(end.met) && angle >= meets) Object.assign(end, { met: t, speed })
    if (!Number.isNaN(end.met) && speed <= 0) return { ...end, angle: angle - meets }
    const squeeze = (p.thread.lead / (2 * Math.PI)) * Math.max(0, angle - p.seat)
    const preload = (1 - p.liner.relaxing) * p.liner.stiffness * squeeze + creeping
    end.torque = Math.max(end.torque, threadTorque(p, angle, preload))
  }
  throw new Error('it turns on and on')
}

const off = (found: number, expected: number) => Math.abs(found / expected - 1)

describe('a second formulation of the same closure', () => {
  it.each<[string, Partial<Plant>]>([
    ['as it is', {}],
    ['without top load', { top: { load: 0, rate: 0 } }],
    ['with a liner that does not creep', { liner: { stiffness: 4e5, relaxing: 0, time: 1 } }],
    ['with one that creeps at once', { liner: { stiffness: 6e5, relaxing: 0.6, time: 0.02 } }],
    [
      'with a steep lead and little friction',
      {
        thread: { lead: 0.012, diameter: 0.05, flank: 0.5, friction: 0.08 },
        liner: { stiffness: 1e5, relaxing: 0.3, time: 0.05 },
      },
    ],
    ['started askew', { jam: { at: 1.2, rate: 8 } }],
    ['by a motor alone', { ratio: 1, efficiency: 1, constant: 0.45, inertias: [1.2e-4, 6e-5, 2e-6], friction: 0.02 }],
  ])('meets its liner as fast, and is turned on as far and with as much torque, %s', (_, changes) => {
    const plant = { ...PLANT, ...changes }
    const expected = integrate(plant)
    const { result, traces } = simulate<CapJudgement>(scenarioOf(plant), 'current-clamp')
    const { metrics } = result
    // The drive sets out a sample of its servo late, 0.25 ms, and its current loop takes some more; bristles bend before they slide.
    expect(metrics.contactTime! - expected.met).toBeGreaterThan(0)
    expect(metrics.contactTime! - expected.met).toBeLessThan(5e-4)
    expect(off(metrics.contactSpeed!, expected.speed)).toBeLessThan(0.01)
    expect(off(metrics.applicationTorque!, expected.torque)).toBeLessThan(0.015)
    const { angle } = traces as unknown as Record<string, Float64Array>
    const meets = Math.min(plant.seat, plant.jam?.at ?? Infinity)
    const first = angle!.findIndex((value, n) => value > meets && (angle![n + 1] ?? 0) < value)
    expect(off(angle![first]! - meets, expected.angle)).toBeLessThan(0.02)
  })
})
