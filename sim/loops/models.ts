/** The loops as matrices and as tables, to be taken on in a notebook. */
import type { Scenario } from '../scenario/index.ts'
import type { AnalysisOptions, LoopsResult } from './analyse.ts'
import { Cascade } from './cascade.ts'
import type { Complex } from './complex.ts'
import { type Dense, eigenvalues, rowsOf } from './matrix.ts'
import type { LoopId } from './model.ts'
import { liftedOf, type Multirate } from './multirate.ts'
import { type WorkingPointId, workingPoint } from './working-point.ts'
import { zerosOf } from './zeros.ts'

/**
 * x⁺ = A x + B u, y = C x + D u, one step a `period` [s]; u = −y closes the loop, so L(z) = C (zI − A)⁻¹ B + D. Matrices row by row;
 * a pole or zero is [real, imaginary] in the z plane. u is what the controller gives: current wanted [A] of position and velocity
 * loop, speed wanted [m/s] of the force loop; the current loop is cut at the current error [A] instead.
 */
export interface StateSpace {
  period: number
  a: number[][]
  b: number[][]
  c: number[][]
  d: number[][]
  /** Eigenvalues of A: of the loop cut open. */
  poles: [number, number][]
}

export interface ExportedLoop extends StateSpace {
  loop: LoopId
  workingPoint: WorkingPointId
  zeros: [number, number][]
  closedPoles: [number, number][]
  /**
   * Only of the current loop, which is given above with the servo's command held: the same with the servo closed around it, one step
   * a period of the servo, u and y one entry a sample of the current loop.
   */
  multirate: StateSpace | null
}

export interface LoopModels {
  format: 'jawbench-loop-models'
  version: 1
  scenario: string
  loops: ExportedLoop[]
}

/** The loops of a result as matrices. Throws as analyseLoops does. */
export function loopModels(
  scenario: Scenario,
  { loops, workingPoints }: Pick<LoopsResult, 'loops' | 'workingPoints'>,
  options: AnalysisOptions = {},
): LoopModels {
  const cascades = new Map(
    workingPoints.map(({ id }) => [id, new Cascade(scenario, workingPoint(scenario, id, options))]),
  )
  return {
    format: 'jawbench-loop-models',
    version: 1,
    scenario: scenario.name,
    loops: loops.map(({ loop, workingPoint }) => {
      const cascade = cascades.get(workingPoint)!
      return { loop, workingPoint, ...(loop === 'current' ? currentModel(cascade) : servoModel(cascade, loop)) }
    }),
  }
}

type Model = Omit<ExportedLoop, 'loop' | 'workingPoint'>

function servoModel(cascade: Cascade, loop: Exclude<LoopId, 'current'>): Model {
  const { period, a, b, c } = cascade.loop(loop)
  return { ...single(period, a, b, c), closedPoles: pairs(cascade.closedPoles(loop)), multirate: null }
}

function currentModel(cascade: Cascade): Model {
  const model = cascade.currentLoop()
  const { a, b, c } = held(model)
  const { a: whole, b: into, c: out, d } = liftedOf(model)
  const closed = a.copy()
  for (let i = 0; i < a.rows; i++) for (let j = 0; j < a.rows; j++) closed.add(i, j, -b[i]! * c[j]!)
  return {
    ...single(model.period, a, b, c),
    closedPoles: pairs(eigenvalues(closed)),
    multirate: {
      period: model.period * model.count,
      a: rowsOf(whole),
      b: rowsOf(into),
      c: rowsOf(out).map((row) => row.map((value) => -value)),
      d: rowsOf(d).map((row) => row.map((value) => -value)),
      poles: pairs(eigenvalues(whole)),
    },
  }
}

/** The fast loop alone: without the states that the servo holds. */
function held({ fast, input, error, servoStates }: Multirate) {
  const kept = [...input.keys()].slice(0, input.length - servoStates)
  return {
    a: fast.kept(kept),
    b: Float64Array.from(kept, (i) => input[i]!),
    c: Float64Array.from(kept, (i) => -error[i]!),
  }
}

function single(period: number, a: Dense, b: Float64Array, c: Float64Array) {
  return {
    period,
    a: rowsOf(a),
    b: Array.from(b, (value) => [value]),
    c: [Array.from(c)],
    d: [[0]],
    poles: pairs(eigenvalues(a)),
    zeros: pairs(zerosOf(a, b, c)),
  }
}

const pairs = (list: readonly Complex[]) => list.map(({ re, im }): [number, number] => [re, im])

const COLUMNS = [
  'loop',
  'working point',
  'frequency [rad/s]',
  'L real',
  'L imaginary',
  'L [dB]',
  'L phase [deg]',
  '1/(1+L) [dB]',
  'L/(1+L) [dB]',
]

/** Frequency responses of a result that was asked for with its curves, one row a frequency: RFC 4180, one header row. */
export function responseCsv({ loops }: Pick<LoopsResult, 'loops'>): string {
  const rows = loops.flatMap(({ loop, workingPoint, curves }) => {
    if (!curves) return []
    const { frequency, re, im, magnitude, phase, sensitivity, complementary } = curves
    const columns = [frequency, re, im, magnitude, phase, sensitivity, complementary]
    return Array.from(frequency, (_, i) => [loop, workingPoint, ...columns.map((column) => digits(column[i]!))])
  })
  return [COLUMNS, ...rows].map((row) => `${row.join(',')}\r\n`).join('')
}

/** Nine digits; a field stays empty where a loop without a gain has no decibels. */
const digits = (value: number) => (Number.isFinite(value) ? String(Number(value.toPrecision(9))) : '')
