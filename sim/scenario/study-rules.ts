/** What requirements and spread demand: of each law its own sizes, of each path a quantity of this scenario that may vary. */

import type { Fault } from './fault.ts'
import { readPath } from './path.ts'
import { quantityAt } from './quantity-at.ts'
import type { JobId, Scenario, Varied } from './schema/index.ts'

type Size = keyof Varied &
  ('sd' | 'tolerance' | 'cpk' | 'within' | 'half' | 'low' | 'mode' | 'high' | 'factor' | 'values')

const SIZES: Size[] = ['sd', 'tolerance', 'cpk', 'within', 'half', 'low', 'mode', 'high', 'factor', 'values']

/** Sizes that a law may have; one of each list in `needs` must be whole. */
const LAW_SIZES: Record<Varied['law'], { may: Size[]; needs: Size[][] }> = {
  normal: { may: ['sd', 'tolerance', 'cpk', 'within'], needs: [['sd'], ['tolerance', 'cpk']] },
  uniform: { may: ['half'], needs: [['half']] },
  triangular: { may: ['low', 'mode', 'high'], needs: [['low', 'mode', 'high']] },
  lognormal: { may: ['factor'], needs: [['factor']] },
  measured: { may: ['values'], needs: [['values']] },
}

/** Quantities of the simulation itself, and the seed, which differs from grip to grip by itself. */
const FIXED = /^(run|spread|requirements)\b/

export const requirementFaults = ({ requirements }: Scenario): Fault[] =>
  Object.entries(requirements).flatMap(([id, bound]): Fault[] => {
    const path = `requirements.${id}`
    const { least, most } = bound ?? {}
    if (least === undefined && most === undefined)
      return [{ path, given: 'neither "least" nor "most"', allowed: 'one of them, or both' }]
    if (least !== undefined && most !== undefined && least > most)
      return [{ path: `${path}.most`, given: String(most), allowed: `at least the least of ${least}` }]
    return []
  })

export const spreadFaults = (scenario: Scenario): Fault[] => {
  const { varies, together } = scenario.spread
  const paths = varies.map(({ path }) => path)
  return [
    ...varies.flatMap((varied, at) => [
      ...pathFaults(scenario, varied.path, paths.indexOf(varied.path) < at, `spread.varies[${at}].path`),
      ...lawFaults(varied, `spread.varies[${at}]`),
    ]),
    ...together.flatMap((pair, at) => pairFaults(pair.paths, paths, together, `spread.together[${at}].paths`)),
  ]
}

/** A quantity that a file of the job always has. */
const EXAMPLES: Record<JobId, string> = {
  grip: 'part.width',
  press: 'bushing.interference',
  cap: 'closure.threadFriction',
  web: 'web.modulus',
}

function pathFaults(scenario: Scenario, given: string, doubled: boolean, path: string): Fault[] {
  const allowed = `the path of a quantity that this scenario has, such as ${EXAMPLES[scenario.job]}`
  if (FIXED.test(given)) return [{ path, given, allowed: 'a quantity of the hardware, the part or the job' }]
  if (!quantityAt(scenario, given) || typeof readPath(scenario, given) !== 'number') return [{ path, given, allowed }]
  return doubled ? [{ path, given: `${given} a second time`, allowed: 'each quantity once' }] : []
}

function lawFaults(varied: Varied, path: string): Fault[] {
  const { may, needs } = LAW_SIZES[varied.law]
  const given = SIZES.filter((size) => varied[size] !== undefined)
  const stray = given.filter((size) => !may.includes(size))
  const ways = needs.map((sizes) => sizes.map((size) => `"${size}"`).join(', ')).join(' or ')
  if (stray.length > 0)
    return stray.map((size) => ({
      path: `${path}.${size}`,
      given: `a size that the law "${varied.law}" does not have`,
      allowed: `${may.map((each) => `"${each}"`).join(', ')}`,
    }))
  const whole = needs.filter((sizes) => sizes.every((size) => given.includes(size)))
  if (whole.length !== 1)
    return [
      {
        path,
        given: given.map((size) => `"${size}"`).join(', ') || 'no size',
        allowed: `for the law "${varied.law}" ${ways}`,
      },
    ]
  return orderFaults(varied, path)
}

function orderFaults({ law, low = 0, mode = 0, high = 0, values }: Varied, path: string): Fault[] {
  if (law === 'triangular' && !(low <= mode && mode <= high))
    return [{ path: `${path}.mode`, given: String(mode), allowed: `from the low end ${low} to the high end ${high}` }]
  if (law === 'measured' && values!.length === 0)
    return [{ path: `${path}.values`, given: 'a list of 0', allowed: 'at least one value' }]
  return []
}

function pairFaults(pair: string[], paths: string[], all: { paths: string[] }[], path: string): Fault[] {
  const [a, b] = pair
  const allowed = 'two different paths that stand in spread.varies'
  if (pair.length !== 2 || a === b || !pair.every((each) => paths.includes(each)))
    return [{ path, given: pair.join(', ') || 'nothing', allowed }]
  const same = all.filter(({ paths: other }) => other.includes(a!) && other.includes(b!))
  return same.length > 1 ? [{ path, given: `${a}, ${b} a second time`, allowed: 'each pair once' }] : []
}
