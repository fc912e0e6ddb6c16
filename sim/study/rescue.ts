/**
 * What would save it: for every parameter that an engineer can change alone, the smallest change that turns the verdict into
 * `held`, found on the real simulator by bracketing away from the present value in both directions and bisection. For a held
 * part the same search finds how far each parameter may drift before it is lost.
 */
import { simulateGrip } from '../grip/simulate.ts'
import { editScenario, type QuantitySchema, readPath, SCHEMAS, type Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export interface Rescue {
  path: string
  label: string
  /** Value on the bench, value that turns the verdict (null: no change of this parameter alone does), and their ratio less 1. */
  from: number
  value: number | null
  change: number | null
}

export interface RescueProgress {
  rescue: Rescue
  done: number
  of: number
}

const ALL = [
  'approach.speed',
  'approach.creepFrom',
  'approach.overtravel',
  'jaws.padStiffness',
  'jaws.friction.static',
  'drive.busVoltage',
]
const POSITION = ['servo.kp', 'servo.ki', 'servo.kd', 'servo.rate']
const OWN: Record<StrategyId, string[]> = {
  'threshold-stop': [...POSITION, 'strategies.thresholdStop.threshold', 'strategies.thresholdStop.confirmTime'],
  'current-clamp': [...POSITION, 'strategies.currentClamp.limit'],
  'sensed-force': [
    'strategies.sensedForce.target',
    'strategies.sensedForce.kp',
    'strategies.sensedForce.ki',
    'strategies.sensedForce.deadband',
    'strategies.sensedForce.speedLimit',
    'strategies.sensedForce.velocity.kp',
    'strategies.sensedForce.velocity.ki',
  ],
}

/** Factors at which the present value is tried, ever further away. */
const STRIDES = [1.25, 1.6, 2.5, 5, 12]
/** Bisections of the last stride, on the ratio. */
const HALVINGS = 6

/** Parameters that are searched, in the order of the power's way. */
export function rescuePaths(scenario: Scenario, strategy: StrategyId): string[] {
  const lead = scenario.actuator.kind === 'screw' ? ['actuator.transmission.lead'] : []
  return [...ALL, ...lead, ...OWN[strategy]]
}

/** One answer a parameter, as it is found. `held`: the present verdict is held, so the search is for what loses the part. */
export function* rescues(scenario: Scenario, strategy: StrategyId): Generator<RescueProgress> {
  const paths = rescuePaths(scenario, strategy)
  const held = simulateGrip(scenario, strategy).result.verdict === 'held'
  for (const [n, path] of paths.entries())
    yield { rescue: search(scenario, strategy, path, !held), done: n + 1, of: paths.length }
}

/** By how little must change, what does not help last. */
export const sortRescues = (found: Rescue[]): Rescue[] =>
  [...found].sort((a, b) => size(a.change) - size(b.change) || a.path.localeCompare(b.path))

const size = (change: number | null) => (change === null ? Number.POSITIVE_INFINITY : Math.abs(Math.log(1 + change)))

function search(scenario: Scenario, strategy: StrategyId, path: string, wanted: boolean): Rescue {
  const schema = schemaAt(scenario, path)
  const given = readPath(scenario, path) as number
  const from = startOf(scenario, path, given)
  const hits = (value: number) => {
    const checked = editScenario(scenario, [{ path, value }])
    return checked.ok && (simulateGrip(checked.scenario, strategy).result.verdict === 'held') === wanted
  }
  const up = from > 0 ? toward(from, 1, schema, hits) : null
  const down = from > 0 ? toward(from, -1, schema, hits) : null
  const ratio = (value: number | null) => (value === null ? Number.POSITIVE_INFINITY : Math.abs(Math.log(value / from)))
  const value = ratio(up) <= ratio(down) ? up : down
  return { path, label: schema.title, from: given, value, change: value === null ? null : value / from - 1 }
}

/** A creep zone that is off is searched from just before contact. */
const startOf = ({ part }: Scenario, path: string, given: number) =>
  path === 'approach.creepFrom' ? Math.max(given, part.width) : given

function toward(
  from: number,
  sign: 1 | -1,
  { minimum, maximum }: QuantitySchema,
  hits: (value: number) => boolean,
): number | null {
  let before = from
  for (const stride of STRIDES) {
    const value = Math.min(maximum, Math.max(minimum, sign > 0 ? from * stride : from / stride))
    if (value === before) return null
    if (hits(value)) return bisect(before, value, hits)
    before = value
  }
  return null
}

/** Nearest value to `miss` that hits, between the two. */
function bisect(miss: number, hit: number, hits: (value: number) => boolean): number {
  let near = miss
  let far = hit
  for (let n = 0; n < HALVINGS; n++) {
    const middle = Math.sqrt(near * far)
    if (hits(middle)) far = middle
    else near = middle
  }
  return far
}

function schemaAt(scenario: Scenario, path: string): QuantitySchema {
  let at: unknown = SCHEMAS[scenario.actuator.kind]
  for (const key of path.split('.')) at = (at as { properties: Record<string, unknown> }).properties[key]
  return at as QuantitySchema
}
