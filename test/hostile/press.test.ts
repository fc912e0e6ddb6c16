/** Presses drawn like grips, half of them anywhere in the allowed ranges: what every run must keep. */
import base64 from 'virtual:core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compiledCore, type Scenario, STRATEGIES } from '../../sim/index.ts'
import { PRESS_VERDICTS, type PressJudgement, type PressResult } from '../../sim/job/press/result.ts'
import { jointWindow } from '../../sim/job/press/window.ts'
import { modelOf } from '../../sim/model/model.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { reasonOf } from '../../sim/say/reason.ts'
import { wordingOf } from '../../sim/say/wording.ts'
import { drawnPresses } from '../job/press/random.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)

/** Steps of the axis that one run may take, runs, and one in so many held against finer steps. */
const MOST = 20_000
const RUNS = 1500
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

function wrongWith(scenario: Scenario, result: PressResult): string | null {
  const { verdict, metrics, events } = result
  const odd = Object.entries({ ...metrics, ...events }).find(([, value]) => value !== null && !Number.isFinite(value))
  if (odd) return `${odd[0]} is ${odd[1]}`
  if (!PRESS_VERDICTS.includes(verdict)) return `verdict ${verdict}`
  if ((verdict === 'unstable') !== (events.unstable !== null)) return 'unstable or not'
  const sizes = ['peakForce', 'settledForce', 'seatForce', 'tiltForce', 'jointPressure', 'holdingForce'] as const
  const negative = sizes.find((id) => (metrics[id] ?? 0) < 0)
  if (negative) return `${negative} is ${metrics[negative]}`
  if ((metrics.settledForce ?? 0) > (metrics.peakForce ?? 0) * ROUNDING) return 'settled above its peak'
  if ((metrics.seatForce ?? 0) > (metrics.peakForce ?? 0)) return 'seated above its peak'
  if ((metrics.seatForce !== null) !== (events.seat !== null)) return 'a seating force without a shoulder'
  if (events.moving !== null && events.seat !== null) return 'on its way, and on the shoulder'
  const { depth, seat, most } = jointWindow(scenario)
  const peak = metrics.peakForce ?? 0
  const reached = metrics.depth ?? 0
  const good =
    metrics.contactTime !== null &&
    events.moving === null &&
    peak <= (most ?? Infinity) &&
    (metrics.bandMargin ?? 0) >= 0 &&
    reached >= depth.least &&
    reached <= (depth.most ?? Infinity) &&
    (metrics.seatForce ?? 0) >= (seat.least ?? 0) &&
    (metrics.seatForce ?? 0) <= (seat.most ?? Infinity)
  if (verdict !== 'unstable' && good !== (verdict === 'seated')) return `${verdict} with ${JSON.stringify(metrics)}`
  const sentence = reasonOf(scenario, result, wordingOf('us'))
  return /^[A-Z].+\.$/.test(sentence) && !/NaN|Infinity|undefined|null/.test(sentence) ? null : sentence
}

describe('hostile presses', () => {
  it(`keep the laws, ${RUNS} of them`, () => {
    const verdicts = new Map<string, number>()
    let runs = 0
    for (const scenario of fc.sample(drawnPresses, { numRuns: 4 * RUNS, seed: 20261127 })) {
      if (runs === RUNS) break
      if (!isShort(scenario)) continue
      const { id } = STRATEGIES[runs % STRATEGIES.length]!
      const checked = runs % CHECKED === 0
      const { result, traces } = simulate<PressJudgement>(scenario, id, { core, stepError: checked })
      const wrong = wrongWith(scenario, result)
      if (wrong) throw new Error(`${id}: ${wrong}\n${JSON.stringify(scenario)}`)
      if (result.verdict !== 'unstable')
        for (const value of [...traces.force, ...(traces as unknown as Record<string, Float64Array>).shoulderForce!])
          if (!(value >= 0)) throw new Error(`${id}: a force of ${value}\n${JSON.stringify(scenario)}`)
      if (checked && result.verdict !== 'unstable' && result.metrics.peakForce && result.metrics.settledForce)
        if (result.stepError === null && result.doubt === null) throw new Error(`${id}: no error is stated`)
      verdicts.set(result.verdict, (verdicts.get(result.verdict) ?? 0) + 1)
      runs++
    }
    expect(runs).toBe(RUNS)
    for (const verdict of PRESS_VERDICTS) expect(verdicts.get(verdict) ?? 0, verdict).toBeGreaterThan(0)
  })
})
