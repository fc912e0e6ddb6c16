/**
 * Version 1 of the format in terms of version 2: what moved, what is new, and how a file, an edit or a fault is carried over. In
 * version 1 the hardware that measures lay under servo and strategy, and there was one job only.
 */
import Type from 'typebox'
import type { Edit } from './edit.ts'
import { group } from './quantity.ts'
import { FIRST_JOB, type GripKind, SCHEMAS } from './schema/index.ts'
import { SETTINGS_BEFORE } from './schema/strategies.ts'

/** Where a key or a group was in version 1, and where it is now. */
const MOVED: readonly (readonly [first: string, now: string])[] = [
  ['servo.encoderResolution', 'sensors.encoder.resolution'],
  ...Object.entries(SETTINGS_BEFORE).flatMap(([strategy, { moved }]) =>
    Object.entries(moved).map(([key, now]) => [`strategies.${strategy}.${key}`, now] as const),
  ),
]

/** Keys at the top that version 1 did not have. */
const NEW = ['job', 'sensors', 'requirements', 'spread']

type Version = 1 | 2

/**
 * The version of a scenario file; null: one that is not known. A file that does not name its version is of version 1 if it has a
 * key that only version 1 had and none that came with version 2.
 */
export function versionOf(input: Record<string, unknown>): Version | null {
  const { version } = input
  if (version === 1 || version === 2) return version
  if (version !== undefined) return null
  if (NEW.some((key) => Object.hasOwn(input, key))) return 2
  return MOVED.some(([first]) => take(input, first) !== undefined) ? 1 : 2
}

/** The schema of version 1 for one kind of actuator, so that a file of version 1 is held against its own keys. */
function firstSchema({ properties }: (typeof SCHEMAS)[GripKind]) {
  const { job: _, requirements: __, spread: ___, sensors, servo, strategies, ...same } = properties
  const { encoder } = sensors.properties
  return Type.Object(
    {
      ...same,
      version: Type.Literal(1, { default: 1 }),
      servo: group('Servo', { ...servo.properties, encoderResolution: encoder.properties.resolution }),
      strategies: group('Strategies', settingsBefore(strategies.properties, { sensors })),
    },
    { title: 'Jawbench scenario, version 1', additionalProperties: false },
  )
}

/** The settings of all strategies with the keys that version 1 had in them; `now` holds what has moved out. */
function settingsBefore(groups: Record<string, Type.TObject>, now: Record<string, Type.TObject>): Type.TProperties {
  const before = Object.entries(SETTINGS_BEFORE).map(([strategy, { moved, fresh }]) => {
    const { properties, title = '' } = groups[strategy] as Type.TObject & { title?: string }
    const old = Object.entries(properties).filter(([key]) => !fresh.includes(key))
    const back = Object.entries(moved).map(([key, path]) => [key, schemaAt(now, path)])
    return [strategy, group(title, Object.fromEntries([...old, ...back]))]
  })
  return { ...groups, ...Object.fromEntries(before) }
}

function schemaAt(groups: Record<string, Type.TSchema>, path: string): Type.TSchema {
  const [first, ...rest] = path.split('.')
  return rest.reduce<Type.TSchema>((at, key) => (at as Type.TObject).properties[key]!, groups[first!]!)
}

export const FIRST_SCHEMAS: Record<GripKind, Type.TSchema> = {
  screw: firstSchema(SCHEMAS.screw),
  rack: firstSchema(SCHEMAS.rack),
  direct: firstSchema(SCHEMAS.direct),
}

/** A file of version 1, sound or not, as version 2 has it; `file` is changed. */
export function lift(file: unknown): unknown {
  if (!isRecord(file)) return file
  for (const [first, now] of MOVED) {
    const value = take(file, first)
    if (value === undefined) continue
    remove(file, first)
    put(file, now, value)
  }
  return Object.assign(file, { version: 2, job: FIRST_JOB })
}

/** An edit as version 2 has it: its path, and what of its value lies elsewhere by now. */
export function liftEdit({ path, value }: Edit): Edit[] {
  const inside = MOVED.filter(([first]) => first.startsWith(`${path}.`)).flatMap(([first, now]) => {
    const key = first.slice(path.length + 1)
    const moved = isRecord(value) ? take(value, key) : undefined
    return moved === undefined ? [] : [{ key, edit: { path: now, value: moved } }]
  })
  if (inside.length === 0) return [{ path: pathNow(path), value }]
  const rest = structuredClone(value) as Record<string, unknown>
  for (const { key } of inside) remove(rest, key)
  return [{ path, value: rest }, ...inside.map(({ edit }) => edit)]
}

/** A path of version 1 as version 2 has it; any other path as it is. */
export const pathNow = (path: string) => carried(path, 0, 1)

/** A path of version 2 as version 1 had it; any other path as it is. */
export const pathBefore = (path: string) => carried(path, 1, 0)

function carried(path: string, from: 0 | 1, to: 0 | 1): string {
  const move = MOVED.find((each) => path === each[from] || path.startsWith(`${each[from]}.`))
  return move ? move[to] + path.slice(move[from].length) : path
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function take(from: unknown, path: string): unknown {
  let at = from
  for (const key of path.split('.')) at = isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined
  return at
}

/** Takes a key away that is there. */
function remove(from: Record<string, unknown>, path: string): void {
  const keys = path.split('.')
  const last = keys.pop()!
  const parent = keys.length > 0 ? take(from, keys.join('.')) : from
  if (isRecord(parent)) delete parent[last]
}

function put(into: Record<string, unknown>, path: string, value: unknown): void {
  const keys = path.split('.')
  const last = keys.pop()!
  let at = into
  for (const key of keys) {
    if (!isRecord(at[key])) at[key] = {}
    at = at[key] as Record<string, unknown>
  }
  at[last] = value
}
