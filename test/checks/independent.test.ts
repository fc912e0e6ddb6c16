/**
 * Whole grips by all strategies against an independent integration (test/independent) of the full continuous equations, which
 * shares no code with the simulator. Most of its results are kept, as it takes a second or two for a grip:
 *
 *     INDEPENDENT=write npx vitest run test/checks/independent.test.ts
 *
 * computes those anew whose case has changed, which is told from what the integration takes of it, and INDEPENDENT=all every one.
 * A threshold that is passed within a hair at a sample is no case: the one or the other sample makes percents of force.
 */
import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import { type Metrics, type Scenario, simulateGrip } from '../../sim/index.ts'
import { type Figures, integrateGrip } from '../independent/grip.ts'
import { readInput } from '../independent/input.ts'
import { STRATEGY_IDS, type StrategyId } from '../independent/strategies.ts'
import { wholeGrips } from './independent-cases.ts'

interface Kept {
  name: string
  strategy: StrategyId
  /** Of the input. */
  fingerprint: string
  figures: Figures
}

/** How far forces may be apart, all told and each [1]; touch [s]; slip and turn [1], and what counts as none of each [m], [rad]. */
const MEDIAN = 0.01
const WORST = 0.02
const TOUCH = 2e-4
const SLIP = 0.01
const LEAST_SLIP = 2e-5
const LEAST_TURN = 2e-4

const FILE = new URL('./fixtures/independent.json', import.meta.url)
const GRIPS = wholeGrips()
/** Integrated anew in each run: short, one of each strategy. */
const LIVE: [string, StrategyId][] = [
  ['foam that yields', 'threshold-stop'],
  ['bauble slides as the arm shakes it sideways', 'current-clamp'],
  ['fruit without creep zone', 'sensed-force'],
]

const fingerprint = (scenario: object) =>
  createHash('sha256')
    .update(JSON.stringify(readInput(scenario)))
    .digest('hex')
    .slice(0, 16)

const readKept = () => JSON.parse(readFileSync(FILE, 'utf8')) as Kept[]

/** Every grip, of those in `known` without integrating it. */
function integrateAll(known: Kept[]): Kept[] {
  return GRIPS.flatMap(({ name, scenario }) =>
    STRATEGY_IDS.map((strategy) => {
      const print = fingerprint(scenario)
      const same = known.find((kept) => kept.strategy === strategy && kept.fingerprint === print)
      return { name, strategy, fingerprint: print, figures: same?.figures ?? integrateGrip(scenario, strategy) }
    }),
  )
}

const wish = process.env.INDEPENDENT
if (wish === 'write' || wish === 'all')
  writeFileSync(FILE, `${JSON.stringify(integrateAll(wish === 'all' ? [] : readKept()), null, 2)}\n`)

const KEPT = readKept()

const keptOf = (name: string, strategy: StrategyId) =>
  KEPT.find((kept) => kept.name === name && kept.strategy === strategy)!

interface Own {
  metrics: Metrics
  /** In the end [rad]. */
  turned: number
}

const simulated = new Map<string, Own>()
function ownOf(name: string, strategy: StrategyId): Own {
  const key = `${name} ${strategy}`
  const known = simulated.get(key)
  if (known) return known
  const { result, traces } = simulateGrip(GRIPS.find((grip) => grip.name === name)!.scenario, strategy, { core })
  const own = { metrics: result.metrics, turned: traces.turn.at(-1)! }
  simulated.set(key, own)
  return own
}

const apart = (value: number, reference: number) => Math.abs(value - reference) / Math.abs(reference)

function median(values: number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}

describe('the kept results are those of the integration', () => {
  it('of each grip as it stands', () => {
    const stands = GRIPS.flatMap(({ name, scenario }) =>
      STRATEGY_IDS.map((strategy) => [name, strategy, fingerprint(scenario)]),
    )
    expect(KEPT.map((kept) => [kept.name, kept.strategy, kept.fingerprint])).toEqual(stands)
  })

  it.each(LIVE)('%s, %s', (name, strategy) => {
    const { scenario } = GRIPS.find((grip) => grip.name === name)!
    const { figures } = keptOf(name, strategy)
    // Between machines sine and power may differ in the last bit, which steps of encoder and current enlarge
    for (const [key, value] of Object.entries(integrateGrip(scenario, strategy))) {
      const kept = figures[key as keyof Figures]!
      expect(Math.abs(value - kept), key).toBeLessThan(1e-4 * Math.abs(kept) + 1e-9)
    }
  })
})

describe.each(GRIPS.map(({ name }) => name))('%s', (name) => {
  it.each(STRATEGY_IDS)('%s', (strategy) => {
    const { figures } = keptOf(name, strategy)
    const { metrics, turned } = ownOf(name, strategy)
    expect(apart(metrics.peakForce!, figures.peakForce), 'peak force').toBeLessThan(WORST)
    expect(apart(metrics.settledForce!, figures.settledForce!), 'settled force').toBeLessThan(WORST)
    expect(Math.abs(metrics.contactTime! - figures.contactTime!), 'touch').toBeLessThan(TOUCH)
    const slip = metrics.slipDistance!
    expect(Math.abs(slip - figures.slipDistance), 'slip').toBeLessThan(SLIP * figures.slipDistance + LEAST_SLIP)
    expect(Math.abs(turned - figures.turned), 'turn').toBeLessThan(SLIP * Math.abs(figures.turned) + LEAST_TURN)
  })
})

it('with set-point weights, integrated anew', () => {
  const { scenario } = GRIPS.find((grip) => grip.name === 'foam that yields')!
  const setpointWeights = { proportional: 0.9, derivative: 0.4 }
  const weighted = { ...scenario, servo: { ...(scenario as Scenario).servo, setpointWeights } } as Scenario
  const { metrics } = simulateGrip(weighted, 'current-clamp', { core }).result
  const figures = integrateGrip(weighted, 'current-clamp')
  expect(
    Math.abs(metrics.contactTime! - ownOf('foam that yields', 'current-clamp').metrics.contactTime!),
  ).toBeGreaterThan(0.001)
  expect(apart(metrics.peakForce!, figures.peakForce), 'peak force').toBeLessThan(WORST)
  expect(apart(metrics.settledForce!, figures.settledForce!), 'settled force').toBeLessThan(WORST)
  expect(Math.abs(metrics.contactTime! - figures.contactTime!), 'touch').toBeLessThan(TOUCH)
})

it('all of them in the median', () => {
  const pairs = KEPT.map(({ name, strategy, figures }) => ({ figures, ...ownOf(name, strategy) }))
  expect(pairs.length).toBeGreaterThanOrEqual(60)
  expect(median(pairs.map(({ figures, metrics }) => apart(metrics.peakForce!, figures.peakForce)))).toBeLessThan(MEDIAN)
  expect(median(pairs.map(({ figures, metrics }) => apart(metrics.settledForce!, figures.settledForce!)))).toBeLessThan(
    0.01,
  )
})
