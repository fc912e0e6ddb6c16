/** What an engineer can change alone, what that costs, and where each parameter is tried: values on either side of the present one, nearest first. */
import { jobOf } from '../job/index.ts'
import { type Edit, type QuantitySchema, quantityAt, readPath, type Scenario } from '../scenario/index.ts'
import { STRATEGIES, strategyOf } from '../strategy/index.ts'
import type { SearchKeys, StrategyId } from '../strategy/strategy.ts'

/**
 * What a change takes in practice, the least first: a number typed into the drive; a gain, after which the loops are looked at again;
 * pads, made anew; another screw, pinion or gear; another drive or motor. An order of common practice, no source.
 */
export const COSTS = ['setting', 'gain', 'tooling', 'mechanics', 'hardware'] as const
export type Cost = (typeof COSTS)[number]

export interface Parameter {
  path: string
  cost: Cost
  /** Sides of the present value that are tried. */
  sides: Side[]
  /** Edits without which a value is refused, or means nothing. */
  along?(scenario: Scenario, value: number): Edit[]
  /** Makes sense only together with those edits. */
  together?: boolean
  /** Is tried where no value of this one turns the verdict. */
  otherwise?: Parameter
}

/** Factors at which the present value is tried: how far help is looked for, and how far a drift. */
const HELP = [1.25, 1.6, 2.5, 5, 12]
const DRIFT = [1.6, 4]

/** Values nearest first, and what lies between two of them. */
export interface Side {
  values: number[]
  /** A value between two others; the same as one of them where nothing lies between. */
  between(near: number, far: number): number
  /** How many times one is the other, as it matters here; without bound to 0. */
  ratio(a: number, b: number): number
}

const ratioOf = (a: number, b: number) => (a === b ? 1 : Math.max(a, b) / Math.max(0, Math.min(a, b)))

/** Three significant digits: what a person types. */
const round = (value: number) => Number(value.toPrecision(3))

/** Parameters of one strategy on one axis; `held`: how far they may drift rather than what would help. */
export function rescueParameters(scenario: Scenario, strategy: StrategyId, held: boolean): Parameter[] {
  const strides = held ? DRIFT : HELP
  const { parameters, clear } = jobOf(scenario).rescue
  const ratio = (cost: Cost, path: string, along?: Parameter['along']): Parameter => ({
    path,
    cost,
    sides: ratioSides(scenario, path, strides, held || path !== 'approach.overtravel' ? 0 : clear),
    ...(along && { along }),
  })
  const { settings, gains, rate: ownRate } = strategyOf(strategy).search
  return [
    ratio('setting', 'approach.speed', creepNoFaster),
    ...creepZone(scenario, held, (path) => ratio('setting', path)),
    ratio('setting', 'approach.acceleration'),
    ratio('setting', 'approach.overtravel'),
    ...parameters.map(({ cost, path, along }) => ratio(cost, path, along)),
    ...MECHANICS[scenario.actuator.kind].map((path) => ratio('mechanics', path)),
    ratio('hardware', MOVING[scenario.actuator.kind]),
    ratio('hardware', 'drive.busVoltage'),
    currentRate(scenario),
    dividing('servo.rate', scenario.drive.currentRate, scenario.servo.rate, ownRatesDivide),
    ...settings.map((path) => ratio('setting', path)),
    ...gains.map((path) => ratio('gain', path)),
    ...(ownRate === null ? [] : [dividing(ownRate, scenario.servo.rate, readPath(scenario, ownRate) as number)]),
  ]
}

type Kind = Scenario['actuator']['kind']

const MECHANICS: Record<Kind, string[]> = {
  screw: ['actuator.transmission.lead'],
  rack: ['actuator.transmission.pinionRadius', 'actuator.transmission.gearRatio'],
  direct: [],
  spindle: ['actuator.transmission.gearRatio'],
}

/** What another motor would bring along into the part: its inertia. */
const MOVING: Record<Kind, string> = {
  screw: 'actuator.motor.inertia',
  rack: 'actuator.motor.inertia',
  direct: 'actuator.motor.movingMass',
  spindle: 'actuator.motor.inertia',
}

/** For a parameter that stands at 0: a first value that is felt, from the others; those of strategies come with them. */
const FIRST: SearchKeys['first'] = {
  ...Object.assign({}, ...STRATEGIES.map(({ search }) => search.first)),
  'approach.overtravel': (scenario) => jobOf(scenario).rescue.clear,
  'servo.kp': () => 100,
  'servo.ki': ({ servo }) => servo.kp,
  'servo.kd': ({ servo }) => servo.kp / 1000,
}

/** `least`: no value below it is tried. */
function ratioSides(scenario: Scenario, path: string, strides: readonly number[], least: number): Side[] {
  const from = readPath(scenario, path) as number
  const { minimum, maximum } = schemaAt(scenario, path)
  const side = (values: number[]): Side => ({
    values: distinct(
      values.map((value) => Math.min(maximum, Math.max(minimum, least, round(value)))),
      from,
    ),
    between(near, far) {
      if (near > 0 && far > 0) return round(Math.sqrt(near * far))
      const half = round(Math.max(near, far) / 2)
      return half > from * NOTHING ? half : near // as good as 0
    },
    ratio: ratioOf,
  })
  if (from > 0) {
    const down = strides.map((stride) => from / stride)
    const below = side(minimum === 0 ? [...down, 0] : down)
    return [side(strides.map((stride) => from * stride)), { ...below, values: below.values.filter((v) => v < from) }]
  }
  const own = jobOf(scenario).rescue.parameters.find((each) => each.path === path)?.first
  const first = own ?? FIRST[path]?.(scenario) ?? 0
  return first > 0 ? [side([1, 4, 16, 64].map((factor) => first * factor))] : []
}

/** Share of the present value that is as good as 0. */
const NOTHING = 1e-3

const distinct = (values: number[], from: number) =>
  values.filter((value, n) => value !== from && value !== values[n - 1])

/**
 * A creep zone is tried by its length. Where there is none, one that is ever longer, at the creep speed that is set, and where that does
 * not help, one of a sensible length, ever slower; work done well without one has none that drifts.
 */
function creepZone(scenario: Scenario, held: boolean, ratio: (path: string) => Parameter): Parameter[] {
  const { approach } = scenario
  const path = 'approach.creepFrom'
  const cost = 'setting'
  const zone = jobOf(scenario).rescue.creep(scenario)
  const { none, most } = zone
  const place = (length: number) => Number((none + length).toPrecision(9))
  const reach = most - none
  const now = approach.creepFrom - none
  const shortest = held ? zone.tried : zone.shortest
  const lengths = (from: number, factor: number) => {
    const found: number[] = []
    for (let length = from; length < reach && length > 0.999 * shortest; length *= factor)
      found.push(place(round(length)))
    return found
  }
  const between = (near: number, far: number) => {
    const [a, b] = [near - none, far - none]
    return Math.min(a, b) > shortest / 2 ? place(round(Math.sqrt(a * b))) : near
  }
  const ratioOfLengths = (a: number, b: number) => ratioOf(a - none, b - none)
  const side = (values: number[]): Side => ({ values, between, ratio: ratioOfLengths })
  if (now > 0)
    return [
      {
        path,
        cost,
        sides: [side([...lengths(now * 2, 2), most]), side([...lengths(now / 2, 0.5), ...(held ? [none] : [])])],
      },
      ratio('approach.creepSpeed'),
    ]
  if (held) return []
  const slow = Math.min(approach.creepSpeed, approach.speed)
  const slower = HELP.map((stride) => round(slow / stride))
  return [
    {
      path,
      cost,
      sides: [side([...lengths(shortest, 2), most])],
      along: () => [{ path: 'approach.creepSpeed', value: slow }],
      otherwise: {
        path: 'approach.creepSpeed',
        cost,
        sides: [{ values: slower, between: (near, far) => round(Math.sqrt(near * far)), ratio: ratioOf }],
        along: () => [{ path, value: place(zone.sensible) }],
        together: true,
      },
    },
  ]
}

const creepNoFaster = ({ approach }: Scenario, speed: number): Edit[] => [
  { path: 'approach.creepSpeed', value: Math.min(approach.creepSpeed, speed) },
]

/** A rate that takes the values `at(1)`, `at(2)` … only; `tried` says which of them, nearest first, and then those between. */
function rate(
  path: string,
  now: number,
  at: (n: number) => number,
  tried: number[][],
  along?: Parameter['along'],
): Parameter {
  const stepsOf = (value: number) => Math.round(at(1) > at(2) ? at(1) / value : value / at(1))
  const between = (near: number, far: number) => {
    const [a, b] = [stepsOf(near), stepsOf(far)]
    return Math.abs(a - b) > 1 ? at(Math.floor((a + b) / 2)) : near
  }
  const sides = tried.map((steps) => ({ values: distinct(steps.map(at), now), between, ratio: ratioOf }))
  return { path, cost: 'hardware', sides, ...(along && { along }) }
}

/** A rate that must divide `whole`. */
function dividing(path: string, whole: number, now: number, along?: Parameter['along']): Parameter {
  const parts = Math.round(whole / now)
  const faster = [2, 4, 8].map((n) => Math.max(1, Math.round(parts / n)))
  return rate(path, now, (n) => whole / n, [faster, [2, 4, 8].map((n) => parts * n)], along)
}

/** The current loop's rate is a whole multiple of the servo's. */
function currentRate({ drive, servo }: Scenario): Parameter {
  const times = Math.round(drive.currentRate / servo.rate)
  const slower = [2, 4].map((n) => Math.max(1, Math.round(times / n)))
  return rate('drive.currentRate', drive.currentRate, (n) => n * servo.rate, [[2 * times, 4 * times], slower])
}

/** Rates of loops under the servo's still divide it. */
const ownRatesDivide = (scenario: Scenario, rate: number): Edit[] =>
  STRATEGIES.flatMap(({ search }) => {
    if (search.rate === null) return []
    const now = readPath(scenario, search.rate) as number
    return [{ path: search.rate, value: rate / Math.max(1, Math.round(rate / now)) }]
  })

export const schemaAt = (scenario: Scenario, path: string): QuantitySchema => quantityAt(scenario, path)!
