/** Why of a web: causes add up and name what is the web's own. */
import { describe, expect, it } from 'vitest'
import { removalsOf } from '../../../sim/ask/counter-runs.ts'
import type { Runner } from '../../../sim/ask/runner.ts'
import { explain } from '../../../sim/ask/why.ts'
import { run as runGrip } from '../../../sim/cli/core.ts'
import { editScenario, jobOf, type Scenario, type StrategyId } from '../../../sim/index.ts'
import type { WebJudgement } from '../../../sim/job/web/result.ts'
import { WEB_PRESETS } from '../../../sim/others.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { whySentence } from '../../../sim/say/why.ts'
import { wordingOf } from '../../../sim/say/wording.ts'

/** Of all causes those that a web without them would not be, so that there are few orders. */
const FEW = removalsOf(jobOf(WEB_PRESETS[1]!.scenario)).filter(({ cause }) =>
  ['momentum', 'drag', 'inertia', 'runout', 'friction'].includes(cause),
)

const run = runGrip as unknown as Runner<WebJudgement>

function film(edits: Record<string, unknown> = {}): Scenario {
  const quick = { 'run.duration': 2.3, 'line.ramps': [{ start: 1.5, speed: 0.6, acceleration: 2, jerk: 20 }] }
  const list = Object.entries({ ...quick, ...edits }).map(([path, value]) => ({ path, value }))
  const checked = editScenario(WEB_PRESETS[1]!.scenario, list)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

function told(scenario: Scenario, id: StrategyId = 'current-clamp') {
  const { result } = run(scenario, id)
  const why = explain<WebJudgement>(scenario, id, result.verdict, run, FEW)
  return { why, result, said: inPlainSpaces(whySentence(scenario, why, wordingOf('si'))) }
}

describe('why of a web', () => {
  it('adds up to the least tension, and finds the inertia that nobody made up for', () => {
    const up = [{ start: 1.5, speed: 0.6, acceleration: 1, jerk: 5 }]
    const { why, result, said } = told(
      film({ 'follow.inertia': 0, 'roll.inertia': 0.008, 'line.ramps': up, 'window.from': 1.45 }),
    )
    expect(result.verdict).toBe('slack')
    expect(why).toMatchObject({ job: 'web', figure: 'least', bound: 12, force: result.metrics.leastTension })
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
    const inertia = why.causes.find(({ cause }) => cause === 'inertia')!
    // J·a/R² with motor and idlers, closed form.
    const lost = (0.008 + 0.00015 * 0.9 + 1e-4) / 0.03 ** 2
    expect(Math.abs(inertia.alone! / -lost - 1)).toBeLessThan(0.2) // and the swing of the roll about it
    expect(said).toMatch(/^The web comes down to [\d.]+ N, where 12 N are needed\. The setting means [\d.]+ N; /)
  })

  it('adds up to the most of one that is taut, and gives a round roll what is due', () => {
    const { why, result } = told(film({ 'roll.runout': 0.001 }))
    expect(why).toMatchObject({ figure: 'most', bound: 25, force: result.metrics.mostTension })
    expect(why.causes.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(why.force!, 6)
    expect(why.causes.find(({ cause }) => cause === 'runout')!.force).toBeGreaterThan(0.2)
  })
})
