/**
 * Starting values by the inverse model: the force that a measured motion took is linear in mass and friction, so least squares give
 * them at once (Gautier, Janot and Vandanjon, IEEE Trans. Control Systems Technology 21(2), 2013). Speed and acceleration are central
 * differences of the position after a low pass without phase, and the same low pass goes over force and regressors.
 */
import { EigenvalueDecomposition, Matrix, QrDecomposition } from 'ml-matrix'
import { interpolated, slopeOf, stepOf, ticks } from './grid.ts'
import { zeroPhase } from './zero-phase.ts'

/** A log as least squares need it: position [m] and force of the motor at the output [N]. */
export interface Motion {
  time: Float64Array
  position: Float64Array
  force: Float64Array
}

export interface InverseOptions {
  /** Viscous friction of its own for each direction; Coulomb friction likewise, which then takes the place of the offset. */
  viscousByDirection?: boolean
  coulombByDirection?: boolean
  /** Corner of the low pass [Hz]. */
  corner?: number
}

/** Moving mass [kg], friction [N], [N·s/m], offset of the force [N]. */
export interface InverseModel {
  mass: number
  coulomb: number
  coulombBack: number
  viscous: number
  viscousBack: number
  offset: number
  /** Norm of what is left over the norm of the force. */
  relative: number
  rows: number
}

/** Corner of the low pass over the sample rate where none is asked for; common practice, no source. */
const CORNER = 0.05
/** Slower than this share of the fastest speed the direction is taken for unknown, and the row left out. */
const STANDING = 0.02

/** Throws a RangeError where nothing moves, or moves in one way only. */
export function inverseModel(motions: readonly Motion[], options: InverseOptions = {}): InverseModel {
  const rows = motions.flatMap((motion) => rowsOf(motion, options))
  if (rows.length < 10) throw new RangeError('nothing moves')
  const y = Matrix.columnVector(rows.map(({ force }) => force))
  const w = new Matrix(rows.map(({ regressors }) => regressors))
  if (isPlain(w)) throw new RangeError('the motion is too plain to part mass from friction')
  const found = new QrDecomposition(w).solve(y)
  const left = Matrix.sub(y, w.mmul(found)).norm('frobenius')
  const at = (k: number) => found.get(k, 0)
  const shared = { mass: at(0), relative: left / y.norm('frobenius'), rows: rows.length }
  const two = options.viscousByDirection ? 2 : 1
  const last = at(two + 2)
  const viscous = { viscous: at(1), viscousBack: at(two), coulomb: at(two + 1) }
  return options.coulombByDirection
    ? { ...shared, ...viscous, coulombBack: last, offset: 0 }
    : { ...shared, ...viscous, coulombBack: at(two + 1), offset: last }
}

/** Columns of unit length whose least singular value squared is this small differ by noise only. */
const PLAIN = 1e-6

function isPlain(w: Matrix): boolean {
  const unit = w.clone()
  for (let p = 0; p < w.columns; p++) unit.mulColumn(p, 1 / (w.getColumnVector(p).norm('frobenius') || 1))
  const { realEigenvalues } = new EigenvalueDecomposition(unit.transpose().mmul(unit), { assumeSymmetric: true })
  return Math.min(...realEigenvalues) < PLAIN
}

function rowsOf(
  motion: Motion,
  { viscousByDirection, coulombByDirection, corner }: InverseOptions,
): { regressors: number[]; force: number }[] {
  const step = stepOf(motion.time)
  const first = motion.time[0]!
  const at = ticks(Math.floor((motion.time.at(-1)! - first) / step) + 1, step).map((t) => t + first)
  const share = Math.min(0.45, corner === undefined ? CORNER : corner * step)
  const smooth = (values: Float64Array) => zeroPhase(values, share)
  const position = smooth(interpolated(motion.time, motion.position, at))
  const speed = slopeOf(at, position)
  const acceleration = slopeOf(at, speed)
  const least = STANDING * speed.reduce((most, each) => Math.max(most, Math.abs(each)), 0)
  const way = (sign: number) => speed.map((v) => (Math.sign(v) === sign ? 1 : 0))
  const [forwards, back] = [way(1), way(-1)]
  const columns = [
    acceleration,
    ...(viscousByDirection ? [times(speed, forwards), times(speed, back)] : [speed]),
    ...(coulombByDirection ? [forwards, back.map((each) => -each)] : [speed.map(Math.sign), speed.map(() => 1)]),
  ]
  const regressors = columns.map(smooth)
  const force = smooth(interpolated(motion.time, motion.force, at))
  // At the ends the low pass has been carried on, not measured.
  const edge = Math.min(Math.ceil(1 / share), Math.floor(at.length / 4))
  const rows: { regressors: number[]; force: number }[] = []
  for (let k = edge; k < at.length - edge; k++)
    if (Math.abs(speed[k]!) > least) rows.push({ regressors: regressors.map((each) => each[k]!), force: force[k]! })
  return rows
}

const times = (a: Float64Array, b: Float64Array) => a.map((value, k) => value * b[k]!)
