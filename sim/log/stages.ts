/**
 * What a log can tell, stage by stage: which quantities are free in each, where they start, and which rows count. What the axis shows
 * in free air comes from the inverse model, what the work shows from where and how steeply force rises.
 */

import { GRAVITY } from '../axis/arm.ts'
import { axisOf } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import { type Edit, quantityAt, readPath, type Scenario } from '../scenario/index.ts'
import { type Astray, followsAt } from './astray.ts'
import { interpolated, slopeOf, stepOf, ticks } from './grid.ts'
import { type InverseModel, type InverseOptions, inverseModel } from './inverse.ts'
import { logOf } from './jobs/index.ts'
import { type Measured, wholeColumn } from './measured.ts'
import type { ReplaySetup } from './replay.ts'
import { BREAKAWAY, COULOMB, DELAY } from './replayed.ts'
import { highest, touchOf } from './touch.ts'
import { zeroPhase } from './zero-phase.ts'

export interface LaidLog {
  measured: Measured
  setup: ReplaySetup
  /** Where the axis does not follow its reference: these rows do not count. */
  astray: Astray[]
}

/** A stage of the fit. */
export interface Stage {
  paths: string[]
  /** Rows in which the axis slides, or presses on its work; else all. */
  sliding: boolean
}

/**
 * Slower than this share of the fastest speed the axis counts as standing: its friction is then what the bristles make of how it came to
 * rest, not what slides. On a measured axis estimates of sliding friction agree from here on; common practice, no source.
 */
export const STANDING = 0.05
/** Share of the sample rate over which speed is not looked at; common practice, no source. */
const CORNER = 0.05
/** Force at which the work counts as touched, as a share of the highest. */
const TOUCHED = 0.05

const T = 'actuator.transmission.'
const BRISTLE = `${T}bristleStiffness`

/** Speed [m/s] of what the encoder reads, after a low pass without phase; null: the log has neither position nor speed. */
export function smoothSpeed(measured: Measured): Float64Array | null {
  const position = wholeColumn(measured, 'motorTravel')
  if (!position) return wholeColumn(measured, 'speed')
  const { time } = measured
  const at = evenly(time)
  return interpolated(at, slopeOf(at, zeroPhase(interpolated(time, position, at), CORNER)), time)
}

const evenly = (time: Float64Array): Float64Array => {
  const step = stepOf(time)
  return ticks(Math.floor((time.at(-1)! - time[0]!) / step) + 1, step).map((t) => t + time[0]!)
}

/** Rows of a log in which the axis slides, or presses on its work. */
export function slidingRows({ measured, setup, astray }: LaidLog): (row: number) => boolean {
  const speed = smoothSpeed(measured)
  if (!speed) return () => true
  const follows = followsAt(measured, astray)
  const least = STANDING * highest(speed.filter((_, k) => follows(k)))
  const force = setup.contact ? wholeColumn(measured, 'force') : null
  const touch = force ? TOUCHED * highest(force) : Number.POSITIVE_INFINITY
  return (row) => Math.abs(speed[row]!) > least || (force !== null && Math.abs(force[row]!) > touch)
}

/** Path of the mass that a log of motion tells: the carriage, or the motor's own where the carriage would have to be negative. */
function massPath({ actuator }: Scenario): string {
  return actuator.kind === 'direct' ? 'actuator.motor.movingMass' : 'actuator.motor.inertia'
}

/** What an axis moves in a straight line beside its motor [kg]; a spindle has no carriage. */
const carriageOf = ({ actuator }: Scenario) => (actuator.kind === 'spindle' ? 0 : actuator.transmission.carriageMass)

/** What the inverse model has found, as edits of a scenario. */
export function inverseEdits(scenario: Scenario, found: InverseModel): Edit[] {
  const { actuator } = scenario
  const seen = axisOf(actuator)
  const driven = seen.mass - carriageOf(scenario)
  const own = driven + jobOf(scenario).outputOf(scenario).mass
  const carriage = found.mass - own
  const path = massPath(scenario)
  const scale = Math.max(0.01, 1 + carriage / driven)
  const mass: Edit[] =
    carriage >= 0
      ? [{ path: `${T}carriageMass`, value: carriage }]
      : [
          { path: `${T}carriageMass`, value: 0 },
          { path, value: (readPath(scenario, path) as number) * scale },
        ]
  const coulomb = Math.max(0, found.coulomb)
  const pull = logOf(scenario).pulled(scenario) && scenario.arm.gravity === 'along' ? GRAVITY * found.mass : 0
  return [
    ...mass,
    { path: COULOMB, value: coulomb },
    { path: `${T}viscous`, value: Math.max(0, found.viscous) },
    { path: `${T}coulombBack`, value: Math.max(0, found.coulombBack) },
    { path: `${T}viscousBack`, value: Math.max(0, found.viscousBack) },
    { path: 'drive.currentOffset', value: (found.offset + pull) / seen.forcePerAmpere },
  ]
}

/** The inverse model of all logs in free air; null: none of them moves in a way that tells. */
export function inverseOf(logs: readonly LaidLog[], scenario: Scenario, options: InverseOptions): InverseModel | null {
  const constant = axisOf(scenario.actuator).forcePerAmpere
  const motions = logs.flatMap((log) => {
    const { measured } = log
    const position = wholeColumn(measured, 'motorTravel')
    const current = wholeColumn(measured, 'current') ?? wholeColumn(measured, 'command')
    if (!position || !current) return []
    const end = log.setup.contact ? touchOf(log) : position.length
    const part = (values: Float64Array) => values.subarray(0, end)
    if (end < 50) return []
    return [
      { time: part(measured.time), position: part(position), force: part(current).map((each) => each * constant) },
    ]
  })
  try {
    return motions.length > 0 ? inverseModel(motions, options) : null
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** What the content of the logs allows to be free. */
export function stagesOf(scenario: Scenario, logs: readonly LaidLog[], start: InverseModel | null): Stage[] {
  const [free, contact] = [logs.filter(({ setup }) => !setup.contact), logs.filter(({ setup }) => setup.contact)]
  const stages: Stage[] = []
  // Under a web that pulls all along, mass and friction of the axis are not told apart from what it takes.
  const moving = start && !logOf(scenario).always ? movingPaths(scenario, logs) : []
  if (start && free.some(reverses)) stages.push({ paths: [BRISTLE, BREAKAWAY], sliding: false })
  if (contact.length === 0) return [...stages, { paths: moving, sliding: true }]
  return [...stages, { paths: [...moving, ...logOf(scenario).paths(scenario, contact)], sliding: true }]
}

function movingPaths(scenario: Scenario, logs: readonly LaidLog[]): string[] {
  const voltage = logs.some(({ measured }) => measured.channels.voltage)
  const mass = carriageOf(scenario) > 0 ? `${T}carriageMass` : massPath(scenario)
  const constant =
    scenario.actuator.kind === 'direct' ? 'actuator.motor.forceConstant' : 'actuator.motor.torqueConstant'
  const both = logs.some(reverses)
  return [
    mass,
    COULOMB,
    `${T}viscous`,
    ...(both ? [`${T}viscousBack`, 'drive.currentOffset'] : []),
    ...(voltage ? [constant] : []),
    ...(logs.some(({ measured }) => measured.channels.travel && measured.channels.motorTravel) ? [`${T}backlash`] : []),
  ]
}

/** All that a person may set free of a scenario, whether or not a log tells it; of the work only where it is met. */
export function freeable(scenario: Scenario, contact: boolean): string[] {
  const { kind } = scenario.actuator
  const all = [
    `${T}carriageMass`,
    massPath(scenario),
    COULOMB,
    `${T}coulombBack`,
    `${T}viscous`,
    `${T}viscousBack`,
    BREAKAWAY,
    BRISTLE,
    'drive.currentOffset',
    kind === 'direct' ? 'actuator.motor.forceConstant' : 'actuator.motor.torqueConstant',
    `${T}backlash`,
    `${T}stiffness`,
    ...(contact ? logOf(scenario).free : []),
  ]
  return [...all.filter((path) => quantityAt(scenario, path) && hasValue(scenario, path)), DELAY]
}

/** Keys of friction back that are left out stand for those of the other direction. */
const hasValue = (scenario: Scenario, path: string) =>
  typeof readPath(scenario, path) === 'number' || path === `${T}coulombBack` || path === `${T}viscousBack`

/** It moves forwards and back. */
export function reverses({ measured }: Pick<LaidLog, 'measured'>): boolean {
  const speed = smoothSpeed(measured)
  if (!speed) return false
  const least = STANDING * highest(speed)
  return speed.some((v) => v > least) && speed.some((v) => v < -least)
}

/** Where a quantity starts, its ends, and a change that is felt and still small; `log`: what is searched is its logarithm. */
export interface Range {
  start: number
  least: number
  most: number
  small: number
  log: boolean
}

/** From such a ratio of its ends on the size of a quantity is what is unknown. */
const DECADES = 1e4
/** A change of the logarithm that is felt. */
const SMALL = 0.02

export function rangeOf(scenario: Scenario, path: string): Range {
  if (path === DELAY) return { start: 0, least: -0.1, most: 0.1, small: 1e-4, log: false }
  const schema = quantityAt(scenario, path)!
  const start = readPath(scenario, path) as number
  const [low, high] = (schema as { usual?: [number, number] }).usual ?? [schema.minimum, schema.maximum]
  const size = Math.abs(start) > 0 ? Math.abs(start) : Math.max(Math.abs(low), Math.abs(high))
  // Below the friction that slides nothing breaks away.
  const least = path === BREAKAWAY ? scenario.actuator.transmission.coulomb : schema.minimum
  const most = logOf(scenario).most?.(scenario, path) ?? schema.maximum
  const log = least > 0 && most >= DECADES * least && path !== BREAKAWAY
  return { start, least, most, small: log ? SMALL : 2e-3 * size, log }
}
