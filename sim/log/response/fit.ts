/**
 * Mass, stiffness and damping of the transmission, friction and delay from a measured frequency response: least squares of the
 * logarithm of measured over modelled, magnitude and phase alike, each frequency by what its coherence says (Pintelon and Schoukens,
 * System Identification: A Frequency Domain Approach). The steps of Levenberg and Marquardt are a library's.
 */
import { Matrix } from 'ml-matrix'
import type { Scenario } from '../../scenario/index.ts'
import { varying } from '../../scenario/vary.ts'
import { plainHalf } from '../certainty.ts'
import { type FittedValue, NoFit, type Untold } from '../facts.ts'
import { DELAY } from '../replayed.ts'
import { type Range, rangeOf } from '../stages.ts'
import { stepFrom } from '../step.ts'
import { axisResponse, massesOf, over, type Shown } from './axis.ts'
import { type MeasuredResponse, spreadOf, unrelatedBelow } from './spectrum.ts'

export interface ResponseFit {
  shown: Shown
  values: FittedValue[]
  untold: Untold[]
  /** Rms of the logarithm of measured over modelled, before and after: 0.1 is 0.87 dB and 5.7° together. */
  before: number
  after: number
  /** Frequencies that count, and those left out as their coherence may be that of unrelated signals. */
  used: number
  leftOut: number
  /** Motor side against output in the fitted axis [rad/s]; null: the response does not tell the spring between them. */
  resonance: number | null
  scenario: Scenario
}

const STIFFNESS = 'actuator.transmission.stiffness'
const FREE = [
  'actuator.transmission.carriageMass',
  STIFFNESS,
  'actuator.transmission.damping',
  'actuator.transmission.viscous',
  DELAY,
]
/** Factors on the stiffness from which a few steps are tried, how many, and from how many of them it goes on to the end. */
const SPRINGS = [0.03, 0.1, 0.25, 0.5, 1, 2, 4, 10, 30]
const TRIED = 3
const KEPT = 2
/** Half of the interval of a logarithm from which a value is hardly told, and rms from which the axis is another one: 4.3 dB, 29°. */
const HARDLY = 0.5
const ANOTHER = 0.5

/** Throws a NoFit where fewer frequencies count than quantities are free, and where the model cannot be brought near them. */
export function fitResponse(scenario: Scenario, measured: MeasuredResponse, shown: Shown): ResponseFit {
  const rows = countedRows(measured)
  const leftOut = measured.frequency.length - rows.length
  if (rows.length <= FREE.length)
    throw new NoFit({ kind: 'few-frequencies', used: rows.length, leftOut, free: FREE.length })
  const vary = varying(scenario, FREE.slice(0, -1))
  const space = searchSpace(scenario)
  const weights = rows.map((k) => weightOf(measured, k))
  const left = (z: readonly number[]) => {
    const values = space.plain(z)
    const at = axisResponse(vary(values.slice(0, -1)).scenario, shown, values.at(-1)!, measured.input)
    return rows.flatMap((k, n) => {
      const ratio = over({ re: measured.re[k]!, im: measured.im[k]! }, at(measured.frequency[k]!))
      return [weights[n]! * Math.log(Math.hypot(ratio.re, ratio.im)), weights[n]! * Math.atan2(ratio.im, ratio.re)]
    })
  }
  const found = searchAll(left, space)
  const total = weights.reduce((sum, weight) => sum + 2 * weight * weight, 0)
  const after = Math.sqrt(squares(left(found)) / total)
  if (!(after < ANOTHER)) throw new NoFit({ kind: 'another-response' })
  const fitted = vary(space.plain(found).slice(0, -1)).scenario
  const { values, untold } = toldOf(space, found, halfOf(left, found))
  const spring = untold.some(({ paths }) => paths[0] === STIFFNESS)
  return {
    shown,
    values,
    untold,
    before: Math.sqrt(squares(left(space.start)) / total),
    after,
    used: rows.length,
    leftOut,
    resonance: spring ? null : resonanceOf(fitted),
    scenario: fitted,
  }
}

/**
 * Where the search goes: stiffness, of which the size is unknown, as a logarithm, the others in small steps. As logarithms these would
 * not come back from nothing, where nothing changes with them.
 */
interface Space {
  ranges: Range[]
  logs: boolean[]
  start: number[]
  least: number[]
  most: number[]
  plain(z: readonly number[]): number[]
}

function searchSpace(scenario: Scenario): Space {
  const ranges = FREE.map((path) => rangeOf(scenario, path))
  const logs = FREE.map((path) => path === STIFFNESS)
  const each = (value: (range: Range, log: boolean) => number) => ranges.map((range, p) => value(range, logs[p]!))
  return {
    ranges,
    logs,
    start: each(({ start, least, most, small }, log) =>
      log ? Math.log(Math.min(most, Math.max(start, least))) : start / small,
    ),
    least: each(({ least, small }, log) => (log ? Math.log(least) : least / small)),
    most: each(({ most, small }, log) => (log ? Math.log(most) : most / small)),
    plain: (z) => z.map((value, p) => (logs[p] ? Math.exp(value) : value * ranges[p]!.small)),
  }
}

/** A resonance that starts far from the measured one is not found by slopes: several are tried. */
function searchAll(left: Left, { start, least, most }: Space): number[] {
  const spring = FREE.indexOf(STIFFNESS)
  const inside = (value: number, p: number) => Math.min(most[p]!, Math.max(least[p]!, value))
  const from = (factor: number) => start.map((value, p) => (p === spring ? inside(value + Math.log(factor), p) : value))
  const best = (list: number[][]) => list.map((z) => ({ z, cost: squares(left(z)) })).sort((a, b) => a.cost - b.cost)
  const tried = best(SPRINGS.map((factor) => search(left, from(factor), least, most, TRIED)))
  return best(tried.slice(0, KEPT).map(({ z }) => search(left, z, least, most, STEPS)))[0]!.z
}

/** Values with their limits, within their ranges, and those that the response does not tell. */
function toldOf({ ranges, logs, plain }: Space, found: readonly number[], half: readonly number[]) {
  const untold: Untold[] = []
  const values = FREE.map((path, p): FittedValue => {
    const { start, least, most } = ranges[p]!
    const value = plain(found)[p]!
    const at = (side: number) =>
      Math.min(most, Math.max(least, plain(found.map((z, q) => (q === p ? z + side * half[p]! : z)))[p]!))
    const known = Number.isFinite(half[p]!)
    if (!known) untold.push({ kind: 'nothing', paths: [path] })
    else if (half[p]! > HARDLY * (logs[p] ? 1 : Math.abs(found[p]!))) untold.push({ kind: 'hardly', paths: [path] })
    return { path, from: start, value, low: known ? at(-1) : null, high: known ? at(1) : null }
  })
  return { values, untold }
}

/** Rows that have a response, with a coherence above that of unrelated signals; all of those where none is known. */
export function countedRows({ frequency, re, im, coherence, blocks }: MeasuredResponse): number[] {
  const least = coherence && blocks > 0 ? unrelatedBelow(blocks) : 0
  const known = (k: number) => Number.isFinite(re[k]!) && Number.isFinite(im[k]!) && Math.hypot(re[k]!, im[k]!) > 0
  return [...frequency.keys()].filter(
    (k) => known(k) && (!coherence || Number.isNaN(coherence[k]!) || coherence[k]! > least),
  )
}

/** By its spread, no frequency more than as if it were known to one in a thousand. */
function weightOf({ coherence, blocks }: MeasuredResponse, k: number): number {
  const value = coherence?.[k]
  if (value === undefined || Number.isNaN(value)) return 1
  return 1 / Math.max(1e-3, spreadOf(value, Math.max(1, blocks)))
}

type Left = (z: readonly number[]) => number[]

/** Steps of the search, what counts as settled, and how damping goes. */
const STEPS = 40
const SETTLED = 1e-6
const DAMPING = { first: 1e-2, up: 10, down: 0.2, most: 1e8 }

function search(
  left: Left,
  start: readonly number[],
  least: readonly number[],
  most: readonly number[],
  steps: number,
): number[] {
  let values = [...start]
  let damping = DAMPING.first
  let base = left(values)
  for (let n = 0; n < steps; n++) {
    const slopes = slopesOf(left, values, base)
    const cost = squares(base)
    let gain = 0
    while (gain === 0 && damping <= DAMPING.most) {
      const next = stepFrom({ values, left: Float64Array.from(base), slopes, least, most, damping })
      const there = left(next)
      if (squares(there) < cost) {
        gain = 1 - squares(there) / cost
        values = next
        base = there
        damping = Math.max(1e-9, damping * DAMPING.down)
      } else damping *= DAMPING.up
    }
    if (gain < SETTLED) break
  }
  return values
}

const squares = (list: readonly number[]) => list.reduce((sum, each) => sum + each * each, 0)

const FELT = 1e-4

function slopesOf(left: Left, z: readonly number[], base: readonly number[]): Matrix {
  const slopes = new Matrix(base.length, z.length)
  for (const p of z.keys()) {
    const moved = left(z.map((value, q) => (q === p ? value + FELT : value)))
    for (let k = 0; k < base.length; k++) slopes.set(k, p, (moved[k]! - base[k]!) / FELT)
  }
  return slopes
}

/** Half of each 95 % interval. */
function halfOf(left: Left, z: readonly number[]): number[] {
  const base = left(z)
  return plainHalf(slopesOf(left, z, base), base)
}

/** √(k (1/m₁ + 1/m₂)). */
function resonanceOf(scenario: Scenario): number {
  const { stiffness } = scenario.actuator.transmission
  const { motor, output } = massesOf(scenario)
  return Math.sqrt(stiffness * (1 / motor + 1 / output))
}
