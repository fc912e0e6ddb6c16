/** Tightening a closure: closure and torque, axis. */

import { axisOf } from '../../axis/reflect.ts'
import { perNewton } from '../../job/cap/fill.ts'
import { capIn } from '../../job/cap/scenario.ts'
import { allowedTorque, seatRate, torqueWindow } from '../../job/cap/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import { type Answers, asGiven, figuresAt, given, leftOut, type NewJob, rounded } from './job.ts'

const THREAD = ['closure.meanDiameter', 'closure.lead']
const MAY = ['closure.engagement', 'closure.threadFriction', 'closure.faceFriction', 'liner.stiffness', 'chuck.topLoad']
const TORQUE = ['window.torque.least', 'window.torque.most']

/** Radius of the sealing face over the diameter of the thread; common practice, no source. */
const FACE = 0.46
/** Torque of the free thread as a share of the one that tightens; common practice, no source. */
const RUN_DOWN = 0.03
/** On the liner a closure turns so far until it is tight [rad], where nobody gave the liner's stiffness; common practice, no source. */
const TIGHTENS = 1
/** Share of the turns to the liner before which torque means a thread that was started askew; common practice, no source. */
const STRAIGHT = 0.92
/** Way before the liner on which the head creeps [rad]. */
const CREEPS = Math.PI / 4
/** Share of what is left up to the most torque that momentum may take, as squares since energies add; common practice, no source. */
const BLOW = 0.2
/** Stiffness of the chuck over the torque that it carries [1/rad]; common practice, no source. */
const CHUCK = 35

export const capJob: NewJob = {
  label: 'Tighten a closure on a jar',
  steps: [
    { title: 'Closure', figures: figuresAt(THREAD, MAY) },
    { title: 'Torque', figures: figuresAt(TORQUE, ['closure.stripTorque']) },
  ],
  effort: {
    type: 'number',
    title: 'Wanted application torque',
    symbol: 'T',
    unit: 'N·m',
    minimum: 0.001,
    maximum: 1e5,
    description: 'Torque of the head that every strategy is set to.',
  },
  window: {
    title: 'Torque window',
    unit: '',
    below: 'less leaves the closure loose',
    above: 'more forces or strips it',
    noLeast: 'no least torque is given',
    noMost: 'no most torque is given',
    empty: 'The least torque lies above what the closure may have, so no axis and no tuning can help.',
  },
  whole: (answers) => given(answers, TORQUE[0]!) !== undefined && bounds(answers) !== undefined,
  windowComes: 'appears here as soon as the least or the most torque, or the one at which the thread strips, is given.',
  edits(answers) {
    const diameter = given(answers, 'closure.meanDiameter')
    const torque = middle(answers)
    const engagement = given(answers, 'closure.engagement')
    return [
      ...asGiven(answers, [...THREAD, ...MAY, ...TORQUE, 'closure.stripTorque']),
      ...(diameter === undefined ? [] : [{ path: 'closure.faceRadius', value: rounded(FACE * diameter) }]),
      ...(engagement === undefined ? [] : [{ path: 'window.leastTurns', value: rounded(STRAIGHT * engagement) }]),
      ...(torque === null
        ? []
        : [
            { path: 'closure.runDown', value: rounded(RUN_DOWN * torque, 2) },
            { path: 'chuck.stiffness', value: rounded(CHUCK * torque, 3) },
          ]),
    ]
  },
  follows(scenario, answers) {
    const torque = middle(answers)
    if (torque === null || given(answers, 'liner.stiffness') !== undefined) return []
    const { closure } = capIn(scenario)
    const { climb, on, face } = perNewton(closure)
    const preload = (torque - closure.runDown) / (climb + on + face)
    return [{ path: 'liner.stiffness', value: rounded(preload / (climb * TIGHTENS), 3) }]
  },
  edges(scenario, answers) {
    const most = allowedTorque(scenario)
    return {
      least: given(answers, TORQUE[0]!) === undefined ? null : torqueWindow(scenario).least,
      most: bounds(answers) === undefined ? null : most,
    }
  },
  /** The profile ends so far beyond the liner that the position loop stands at its limit. */
  onAxis(scenario, effort) {
    const { chuck } = capIn(scenario)
    const { servo } = scenario
    const overtravel = 2 * TIGHTENS + (effort ?? 0) / chuck.stiffness + (2 * servo.currentLimit) / servo.kp
    return [
      { path: 'approach.creepSpeed', value: creepOf(scenario, effort ?? 0) },
      { path: 'approach.creepFrom', value: rounded(CREEPS) },
      { path: 'approach.overtravel', value: rounded(overtravel, 3) },
    ]
  },
  lasts(scenario) {
    const { creepFrom, creepSpeed, overtravel, speed } = scenario.approach
    const turn = capIn(scenario).chuck.startAngle + capIn(scenario).closure.engagement
    return rounded(Math.max(1.5, turn / speed + (creepFrom + overtravel) / creepSpeed + 0.8), 2)
  },
  fastest: ({ approach }) => approach.speed,
  assumed: (answers) => [
    ...leftOut(answers, MAY),
    'closure.flankAngle',
    'closure.faceRadius',
    'closure.runDown',
    'chuck.startAngle',
    'chuck.stiffness',
    'approach.speed',
    'approach.creepSpeed',
  ],
}

/** Speed at which the moving mass brings the wanted torque no further than it may [rad/s]: J·ω²·k = share·(most² − T²). */
function creepOf(scenario: Scenario, effort: number): number {
  const { chuck } = capIn(scenario)
  const most = Math.min(allowedTorque(scenario), 1.5 * effort)
  const rate = (seatRate(scenario) * chuck.stiffness) / (seatRate(scenario) + chuck.stiffness)
  const inertia = axisOf(scenario.actuator).mass + chuck.inertia
  const room = Math.max(0.05 * effort * effort, most * most - effort * effort)
  const speed = Math.sqrt((BLOW * room) / (rate * inertia))
  return Math.max(0.2, Math.min(scenario.approach.creepSpeed, rounded(speed, 2)))
}

const bounds = (answers: Answers) => given(answers, 'window.torque.most') ?? given(answers, 'closure.stripTorque')

/** In the middle of what was asked for [N·m]; null: nothing was. */
function middle(answers: Answers): number | null {
  const [least, most] = [given(answers, TORQUE[0]!), bounds(answers)]
  if (least !== undefined && most !== undefined) return (least + most) / 2
  return least ?? most ?? null
}
