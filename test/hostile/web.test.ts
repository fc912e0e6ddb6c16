/** Webs drawn like grips, half of them anywhere in the allowed ranges: what every run must keep. */
import base64 from 'virtual:core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compiledCore, jobOf, type Scenario, strategiesOn } from '../../sim/index.ts'
import { WEB_VERDICTS, type WebJudgement, type WebResult } from '../../sim/job/web/result.ts'
import { tensionWindow } from '../../sim/job/web/window.ts'
import { modelOf } from '../../sim/model/model.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { reasonOf } from '../../sim/say/reason.ts'
import { wordingOf } from '../../sim/say/wording.ts'
import { drawnWebs } from '../job/web/random.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)

/** Steps of the axis that one run may take, runs, and one in so many held against finer steps. */
const MOST = 30_000
const RUNS = 1200
const CHECKED = 10

const KINDS = (scenario: Scenario) => strategiesOn(jobOf(scenario))

function isShort(scenario: Scenario): boolean {
  try {
    const { axis } = modelOf(scenario, KINDS(scenario)[0]!).bench
    return axis.steps * scenario.drive.currentRate * scenario.run.duration <= MOST
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return false
  }
}

/** Rounding of sums over a run. */
const ROUNDING = 1 + 1e-9

function wrongWith(scenario: Scenario, result: WebResult): string | null {
  const { verdict, metrics, events } = result
  const odd = Object.entries({ ...metrics, ...events }).find(([, value]) => value !== null && !Number.isFinite(value))
  if (odd) return `${odd[0]} is ${odd[1]}`
  if (!WEB_VERDICTS.includes(verdict)) return `verdict ${verdict}`
  if ((verdict === 'unstable') !== (events.unstable !== null)) return 'unstable or not'
  const sizes = ['meanTension', 'leastTension', 'mostTension', 'tensionRipple', 'rollRadius'] as const
  const negative = sizes.find((id) => (metrics[id] ?? 0) < 0)
  if (negative) return `${negative} is ${metrics[negative]}`
  if ((metrics.leastTension ?? 0) > (metrics.meanTension ?? 0) * ROUNDING) return 'least above its mean'
  if ((metrics.meanTension ?? 0) > (metrics.mostTension ?? 0) * ROUNDING) return 'mean above the most'
  if ((metrics.rollRadius ?? 1) < 0) return 'no radius'
  const { least, most, tears } = tensionWindow(scenario)
  const peak = metrics.mostTension ?? 0
  const good =
    metrics.tautTime !== null &&
    metrics.leastTension !== null &&
    metrics.leastTension >= least &&
    peak <= most &&
    peak <= (tears ?? Number.POSITIVE_INFINITY)
  if (verdict !== 'unstable' && good !== (verdict === 'taut')) return `${verdict} with ${JSON.stringify(metrics)}`
  const sentence = reasonOf(scenario, result, wordingOf('us'))
  return /^[A-Z].+\.$/.test(sentence) && !/NaN|Infinity|undefined|null/.test(sentence) ? null : sentence
}

describe('hostile webs', () => {
  it(`keep the laws, ${RUNS} of them`, () => {
    const verdicts = new Map<string, number>()
    let runs = 0
    for (const scenario of fc.sample(drawnWebs, { numRuns: 5 * RUNS, seed: 20261127 })) {
      if (runs === RUNS) break
      if (!isShort(scenario)) continue
      const kinds = KINDS(scenario)
      const { id } = kinds[runs % kinds.length]!
      const checked = runs % CHECKED === 0
      const { result, traces } = simulate<WebJudgement>(scenario, id, { core, stepError: checked })
      const wrong = wrongWith(scenario, result)
      if (wrong) throw new Error(`${id}: ${wrong}\n${JSON.stringify(scenario)}`)
      const columns = traces as unknown as Record<string, Float64Array>
      if (result.verdict !== 'unstable')
        for (const name of ['tension', 'rollTension', 'slack', 'radius'])
          for (const value of columns[name]!)
            if (!(value >= 0) && name !== 'rollTension')
              throw new Error(`${id}: ${name} ${value}\n${JSON.stringify(scenario)}`)
      if (checked && result.verdict !== 'unstable' && result.metrics.mostTension && result.metrics.meanTension !== null)
        if (result.stepError === null && result.doubt === null) throw new Error(`${id}: no error is stated`)
      verdicts.set(result.verdict, (verdicts.get(result.verdict) ?? 0) + 1)
      runs++
    }
    expect(runs).toBe(RUNS)
    for (const verdict of WEB_VERDICTS) expect(verdicts.get(verdict) ?? 0, verdict).toBeGreaterThan(0)
  })
})
