/** No scenario that the format allows may hang a run, or make it hand out a number that is none. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CHANNELS, type Scenario, STRATEGIES, simulateGrip, VERDICTS } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { absurd, plausible } from '../grip/random.ts'
import { reasonIn } from '../say/support.ts'
import { KINDS } from '../scenario/schema-walk.ts'

/** Plant steps that one run of these tests may take. */
const MOST = 20_000

/** Whether a run is short enough; one that the simulator itself refuses says so in a sentence. */
function affordable(scenario: Scenario): boolean {
  try {
    return (
      modelOf(scenario, STRATEGIES[0]!).bench.axis.steps * scenario.drive.currentRate * scenario.run.duration <= MOST
    )
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    expect((error as Error).message).toMatch(
      /^run\.duration: given .+, which takes .+, allowed at most .+ s with these/,
    )
    return false
  }
}

function check(scenario: Scenario): void {
  for (const { id } of STRATEGIES) {
    const { result, traces } = simulateGrip(scenario, id)
    expect(VERDICTS).toContain(result.verdict)
    const reason = reasonIn(scenario, result)
    expect(reason).toMatch(/^[A-Z].+\.$/)
    expect(reason).not.toMatch(/NaN|Infinity|undefined|null/)
    for (const [name, value] of Object.entries({ ...result.metrics, ...result.events }))
      if (value !== null && !Number.isFinite(value)) throw new Error(`${id}: ${name} is ${value}`)
    expect(result.verdict === 'unstable').toBe(result.events.unstable !== null)
    const rows = traces.time.length
    for (const { id: channel } of CHANNELS) {
      const column = traces[channel]
      expect(column.length).toBe(rows)
      const bad = column.findIndex((value) => !Number.isFinite(value))
      if (bad >= 0 && result.verdict !== 'unstable') throw new Error(`${id}: ${channel} is ${column[bad]}`)
    }
    for (const force of [traces.force, traces.farForce])
      if (force.some((value) => value < 0)) throw new Error(`${id}: a contact pulls`)
  }
}

describe.each(KINDS)('random %s axes', (kind) => {
  it('within a decade of the defaults run to their end in finite numbers', () => {
    fc.assert(
      fc.property(plausible(kind), (scenario) => {
        fc.pre(affordable(scenario))
        check(scenario)
      }),
      { numRuns: 60, endOnFailure: true },
    )
  })

  it('anywhere in the allowed ranges run to their end in finite numbers', () => {
    fc.assert(
      fc.property(absurd(kind), (scenario) => {
        fc.pre(affordable(scenario))
        check(scenario)
      }),
      { numRuns: 100, endOnFailure: true },
    )
  })
})
