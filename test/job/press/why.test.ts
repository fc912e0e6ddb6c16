/** Why of a press: causes add up, name what is the joint's own, and what has no force to take apart is said in a sentence. */
import { describe, expect, it } from 'vitest'
import type { Runner } from '../../../sim/ask/runner.ts'
import { explain } from '../../../sim/ask/why.ts'
import { run as runGrip } from '../../../sim/cli/core.ts'
import { editScenario, type Scenario, type StrategyId } from '../../../sim/index.ts'
import type { PressJudgement } from '../../../sim/job/press/result.ts'
import { PRESS_PRESETS } from '../../../sim/others.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { whySentence } from '../../../sim/say/why.ts'
import { wordingOf } from '../../../sim/say/wording.ts'

const run = runGrip as unknown as Runner<PressJudgement>

function arm(edits: Record<string, unknown> = {}): Scenario {
  const list = Object.entries({ 'run.cycle': null, ...edits }).map(([path, value]) => ({ path, value }))
  const checked = editScenario(PRESS_PRESETS[0]!.scenario, list)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

function told(scenario: Scenario, id: StrategyId = 'current-clamp') {
  const { result } = run(scenario, id)
  const why = explain<PressJudgement>(scenario, id, result.verdict, run)
  return { why, result, said: inPlainSpaces(whySentence(scenario, why, wordingOf('si'))) }
}

describe('why of a press', () => {
  it('adds up to the peak, and finds the momentum of a quick ram', () => {
    const scenario = arm({ 'approach.creepFrom': 0, 'approach.speed': 0.04 })
    const { why, result, said } = told(scenario)
    expect(why).toMatchObject({ job: 'press', figure: 'peak', bound: 3200, force: result.metrics.peakForce })
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
    const momentum = why.causes.find(({ cause }) => cause === 'momentum')
    expect(momentum!.force).toBeGreaterThan(50)
    // Closed form, an upper bound: all of the kinetic energy into frame and shoulder in series, on top of the push.
    expect(said).toMatch(/^The ram sees at most \d+ N, where 3200 N are allowed\. The setting means \d+ N; /)
  })

  it('gives the tilt what goes with it', () => {
    const { why, result } = told(arm({ 'bushing.tilt': 0.006, 'strategies.currentClamp.limit': 15 }))
    expect(result.verdict).toBe('tilted')
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
    expect(why.untold).toEqual([])
  })

  it('asks about the force that there is where the bushing is short', () => {
    const { why, said } = told(arm({ 'strategies.currentClamp.limit': 7 }))
    expect(why).toMatchObject({ figure: 'settled', verdict: 'short', bound: 1900 })
    expect(said).toMatch(
      /^The ram ends at \d+ N, where it takes 1900 N to get there and stay\. The setting itself means only \d+ N\.$/,
    )
  })

  it('says of a slack joint what makes its force', () => {
    const { why, said } = told(arm({ 'bushing.interference': 4e-6 }))
    expect(why).toMatchObject({ force: null, causes: [] })
    expect(said).toMatch(/^Below the band at .+ The force on the way is what interference/)
  })

  it('says of one that is missed how far the ram is away', () => {
    const { said } = told(arm({ 'ram.gap': 0.055, 'run.duration': 0.5 }))
    expect(said).toMatch(
      /^Never touches the bushing within 0\.500 s\. The ram is still [\d.]+ mm before the bushing as the run ends\.$/,
    )
  })
})
