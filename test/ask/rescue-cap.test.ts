/** What would save a closure: values that are tried on the simulator, and hold where it says that they do. */
import { describe, expect, it } from 'vitest'
import { type Rescue, rescues } from '../../sim/ask/rescue.ts'
import { rescueParameters } from '../../sim/ask/rescue-parameters.ts'
import { run } from '../../sim/cli/core.ts'
import { rescueSentence, type Scenario, wordingOf } from '../../sim/index.ts'
import { CAP_PRESETS } from '../../sim/others.ts'
import { inPlainSpaces } from '../../sim/say/figure.ts'
import { editedBy } from '../job/cap/support.ts'

const STRATEGY = 'current-clamp'
const LIMIT = 'strategies.currentClamp.limit'

/** The answer for one parameter alone. */
function rescueOf(scenario: Scenario, path: string): Rescue {
  const held = run(scenario, STRATEGY).result.verdict === ('tight' as string)
  const n = rescueParameters(scenario, STRATEGY, held).findIndex((parameter) => parameter.path === path)
  const [found] = [...rescues(scenario, STRATEGY, run, { n, of: 1000 })]
  return found!.rescue
}

const verdictAt = (scenario: Scenario, { path, along }: Rescue, value: number): string =>
  run(
    editedBy(scenario, Object.fromEntries([{ path, value }, ...along].map((edit) => [edit.path, edit.value]))),
    STRATEGY,
  ).result.verdict

describe('what would save a closure', () => {
  const loose = editedBy(CAP_PRESETS[0]!.scenario, { 'run.cycle': null, [LIMIT]: 4 })

  it('is a higher clamp where it is loose, up to where it is forced: the border holds on both sides', () => {
    const rescue = rescueOf(loose, LIMIT)
    expect(rescue).toMatchObject({ becomes: 'tight', cost: 'setting' })
    expect(verdictAt(loose, rescue, rescue.value!)).toBe('tight')
    const { from, to } = rescue.interval!
    expect(verdictAt(loose, rescue, from * 1.01)).toBe('tight')
    expect(verdictAt(loose, rescue, from * 0.96)).toBe('loose')
    expect(verdictAt(loose, rescue, to * 0.99)).toBe('tight')
    expect(verdictAt(loose, rescue, to * 1.04)).toBe('forced')
    // Torque in proportion to current, friction and gear aside: the window is as wide in amperes as in newton metres, nearly.
    expect(to / from / (4.86 / 2.82)).toBeGreaterThan(0.9)
    expect(to / from / (4.86 / 2.82)).toBeLessThan(1.1)
    expect(inPlainSpaces(rescueSentence(loose, rescue, wordingOf('si')))).toMatch(
      /^Tight from 4\.\d+ A to 8\.\d+ A\. At .+ A it is tight with 12 of 12 seeds of the noise; the loops keep 6\d.+°/,
    )
  }, 120_000)
})
