/** Closures drawn like grips, half of them anywhere in the allowed ranges: what every run must keep. */
import base64 from 'virtual:core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compiledCore, type Scenario, STRATEGIES, torqueWindow } from '../../sim/index.ts'
import { CAP_VERDICTS, type CapJudgement, type CapResult } from '../../sim/job/cap/result.ts'
import { modelOf } from '../../sim/model/model.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { reasonOf } from '../../sim/say/reason.ts'
import { wordingOf } from '../../sim/say/wording.ts'
import { drawnCaps } from '../job/cap/random.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)

/** Steps of the axis that one run may take, runs, and one in so many held against finer steps. */
const MOST = 20_000
const RUNS = 1200
const CHECKED = 10

function isShort(scenario: Scenario): boolean {
  try {
    const { axis } = modelOf(scenario, STRATEGIES[0]!).bench
    return axis.steps * scenario.drive.currentRate * scenario.run.duration <= MOST
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return false
  }
}

/** Rounding of sums over a run. */
const ROUNDING = 1 + 1e-9

function wrongWith(scenario: Scenario, result: CapResult): string | null {
  const { verdict, metrics, events } = result
  const odd = Object.entries({ ...metrics, ...events }).find(([, value]) => value !== null && !Number.isFinite(value))
  if (odd) return `${odd[0]} is ${odd[1]}`
  if (!CAP_VERDICTS.includes(verdict)) return `verdict ${verdict}`
  if ((verdict === 'unstable') !== (events.unstable !== null)) return 'unstable or not'
  const sizes = ['peakTorque', 'applicationTorque', 'preload', 'removalTorque', 'removalAfter', 'feedSpeed'] as const
  const negative = sizes.find((id) => (metrics[id] ?? 0) < 0)
  if (negative) return `${negative} is ${metrics[negative]}`
  if ((metrics.settledTorque ?? 0) > (metrics.peakTorque ?? 0) * ROUNDING) return 'settled above its peak'
  if (events.seat !== null && events.start === null) return 'met before the thread'
  if (events.strip !== null && (metrics.applicationTorque ?? 0) < (torqueWindow(scenario).strip ?? 0))
    return 'stripped for nothing'
  const { least, most, turns } = torqueWindow(scenario)
  const applied = metrics.applicationTorque ?? 0
  const good =
    metrics.contactTime !== null &&
    events.moving === null &&
    events.jam === null &&
    events.strip === null &&
    (events.reachedTurns ?? Infinity) >= (turns ?? 0) &&
    applied >= least &&
    applied <= (most ?? Infinity)
  if (verdict !== 'unstable' && good !== (verdict === 'tight')) return `${verdict} with ${JSON.stringify(metrics)}`
  const sentence = reasonOf(scenario, result, wordingOf('us'))
  return /^[A-Z].+\.$/.test(sentence) && !/NaN|Infinity|undefined|null/.test(sentence) ? null : sentence
}

describe('hostile closures', () => {
  it(`keep the laws, ${RUNS} of them`, () => {
    const verdicts = new Map<string, number>()
    let runs = 0
    for (const scenario of fc.sample(drawnCaps, { numRuns: 6 * RUNS, seed: 20261127 })) {
      if (runs === RUNS) break
      if (!isShort(scenario)) continue
      const { id } = STRATEGIES[runs % STRATEGIES.length]!
      const checked = runs % CHECKED === 0
      const { result, traces } = simulate<CapJudgement>(scenario, id, { core, stepError: checked })
      const wrong = wrongWith(scenario, result)
      if (wrong) throw new Error(`${id}: ${wrong}\n${JSON.stringify(scenario)}`)
      if (result.verdict !== 'unstable')
        for (const value of (traces as unknown as Record<string, Float64Array>).preload!)
          if (!(value >= 0)) throw new Error(`${id}: a preload of ${value}\n${JSON.stringify(scenario)}`)
      if (checked && result.verdict !== 'unstable' && result.metrics.peakTorque && result.metrics.applicationTorque)
        if (result.stepError === null && result.doubt === null) throw new Error(`${id}: no error is stated`)
      verdicts.set(result.verdict, (verdicts.get(result.verdict) ?? 0) + 1)
      runs++
    }
    expect(runs).toBe(RUNS)
    for (const verdict of CAP_VERDICTS) expect(verdicts.get(verdict) ?? 0, verdict).toBeGreaterThan(0)
  })
})
