/** What would save a joint: values that are tried on the simulator, and hold where it says that they do. */
import { describe, expect, it } from 'vitest'
import { type Rescue, rescues } from '../../sim/ask/rescue.ts'
import { rescueParameters } from '../../sim/ask/rescue-parameters.ts'
import { run } from '../../sim/cli/core.ts'
import { editScenario, JOBS, rescueSentence, type Scenario, wordingOf } from '../../sim/index.ts'
import { slidingForce } from '../../sim/job/press/window.ts'
import { inPlainSpaces } from '../../sim/say/figure.ts'
import { run50 } from '../job/press/support.ts'

const STRATEGY = 'current-clamp'

/** The answer for one parameter alone. */
function rescueOf(scenario: Scenario, path: string): Rescue {
  const held = run(scenario, STRATEGY).result.verdict === JOBS.press.well
  const n = rescueParameters(scenario, STRATEGY, held).findIndex((parameter) => parameter.path === path)
  const [found] = [...rescues(scenario, STRATEGY, run, { n, of: 1000 })]
  return found!.rescue
}

function verdictAt(scenario: Scenario, { path, along }: Rescue, value: number): string {
  const edited = editScenario(scenario, [{ path, value }, ...along])
  if (!edited.ok) throw new Error('refused')
  return run(edited.scenario, STRATEGY).result.verdict
}

const say = (scenario: Scenario, rescue: Rescue) => inPlainSpaces(rescueSentence(scenario, rescue, wordingOf('si')))

describe('what would save a joint', () => {
  const base = run50()
  const limit = slidingForce(base, 0.039) * 0.8
  const forced = run50({ window: { mostForce: limit } })

  it('is less interference where it is forced; the border is that of the closed form, and holds on both sides', () => {
    expect(run(forced, STRATEGY).result.verdict).toBe('forced')
    const rescue = rescueOf(forced, 'bushing.interference')
    expect(rescue).toMatchObject({ becomes: 'seated', cost: 'tooling' })
    expect(verdictAt(forced, rescue, rescue.value!)).toBe('seated')
    // Force in proportion to interference (Lamé): what is allowed over what it takes.
    const { to } = rescue.interval!
    expect(to / 40e-6).toBeGreaterThan(0.75)
    expect(to / 40e-6).toBeLessThan(0.82)
    expect(verdictAt(forced, rescue, to)).toBe('seated')
    expect(verdictAt(forced, rescue, to * 1.04)).toBe('forced')
    expect(say(forced, rescue)).toMatch(
      /^Seated from .+ µm to .+ µm.*\. At .+ it is seated with 12 of 12 seeds of the noise; the loops keep 3\d.+°/,
    )
  }, 60_000)

  it('looks for what loses one that is seated, and says what happens then', () => {
    const rescue = rescueOf(base, 'bushing.tilt')
    expect(rescue.from).toBe(0)
    expect(rescue.tried.length).toBeGreaterThan(1)
    const drift = rescueOf(run50({ window: { mostForce: slidingForce(base, 0.039) * 1.3 } }), 'bushing.interference')
    expect(drift).toMatchObject({ becomes: 'forced', cost: 'tooling' })
    expect(say(base, drift)).toMatch(/; at .+ µm it is forced\.$/)
  }, 60_000)
})
