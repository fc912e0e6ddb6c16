/** Why of a closure: causes add up, name what is the closure's own, and what has no torque to take apart is said in a sentence. */
import { describe, expect, it } from 'vitest'
import type { Runner } from '../../../sim/ask/runner.ts'
import { explain } from '../../../sim/ask/why.ts'
import { run as runGrip } from '../../../sim/cli/core.ts'
import type { Scenario, StrategyId } from '../../../sim/index.ts'
import type { CapJudgement } from '../../../sim/job/cap/result.ts'
import { CAP_PRESETS } from '../../../sim/others.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { whySentence } from '../../../sim/say/why.ts'
import { wordingOf } from '../../../sim/say/wording.ts'
import { editedBy } from './support.ts'

const run = runGrip as unknown as Runner<CapJudgement>

const jar = (edits: Record<string, unknown> = {}): Scenario =>
  editedBy(CAP_PRESETS[0]!.scenario, { 'run.cycle': null, ...edits })

function told(scenario: Scenario, id: StrategyId = 'current-clamp') {
  const { result } = run(scenario, id)
  const why = explain<CapJudgement>(scenario, id, result.verdict, run)
  return { why, result, said: inPlainSpaces(whySentence(scenario, why, wordingOf('si'))) }
}

describe('why of a closure', () => {
  it('adds up to the peak, and finds the momentum of a quick head', () => {
    const scenario = jar({ 'approach.creepFrom': 0, 'approach.speed': 50, 'approach.acceleration': 1000 })
    const { why, result, said } = told(scenario)
    expect(result.verdict).toBe('forced')
    expect(why).toMatchObject({ job: 'cap', figure: 'peak', bound: 4.86 })
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
    const momentum = why.causes.find(({ cause }) => cause === 'momentum')!
    expect(momentum.force).toBeGreaterThan(0.5)
    // Balance of energy, an upper bound: all of the head’s momentum onto the seat, on top of the push.
    expect(momentum.force).toBeLessThan(50 * Math.sqrt(4.5 * 1e-3))
    expect(said).toMatch(
      /^The head sees at most 5\.\d+ N·m, where 4\.86 N·m are allowed\. The setting means 3\.\d+ N·m; /,
    )
  })

  it('gives a misstart what goes with it', () => {
    const { why, result } = told(jar({ 'closure.misstart': { after: 2, stiffness: 8 } }))
    expect(result.verdict).toBe('cross-threaded')
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
  })

  it('asks about the torque that there is where the closure is loose', () => {
    const { why, said } = told(jar({ 'strategies.currentClamp.limit': 4 }))
    expect(why).toMatchObject({ figure: 'applied', verdict: 'loose', bound: 2.82 })
    expect(said).toMatch(/^The closure is turned on with 2\.\d+ N·m, where 2\.82 N·m are needed\. /)
  })

  it('says of one that is missed how far the head has turned', () => {
    const { said } = told(jar({ 'chuck.startAngle': 90, 'run.duration': 0.5 }))
    expect(said).toMatch(
      /^Never comes onto the thread within 0\.500 s\. The head has turned [\d.]+ rev as the run ends, and is not on the thread yet\.$/,
    )
  })
})
