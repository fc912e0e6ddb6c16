/** What would save a web: values that are tried on the simulator, and hold where it says that they do. */
import { expect, it } from 'vitest'
import { type Rescue, rescues } from '../../sim/ask/rescue.ts'
import { rescueParameters } from '../../sim/ask/rescue-parameters.ts'
import { run } from '../../sim/cli/core.ts'
import { editScenario, rescueSentence, type Scenario, wordingOf } from '../../sim/index.ts'
import { WEB_PRESETS } from '../../sim/others.ts'
import { inPlainSpaces } from '../../sim/say/figure.ts'

const STRATEGY = 'current-clamp'
const LIMIT = 'strategies.currentClamp.limit'

function editedBy(scenario: Scenario, edits: readonly { path: string; value: unknown }[]): Scenario {
  const checked = editScenario(scenario, [...edits])
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

/** The answer for one parameter alone. */
function rescueOf(scenario: Scenario, path: string): Rescue {
  const held = run(scenario, STRATEGY).result.verdict === ('taut' as string)
  const n = rescueParameters(scenario, STRATEGY, held).findIndex((parameter) => parameter.path === path)
  const [found] = [...rescues(scenario, STRATEGY, run, { n, of: 1000 })]
  return found!.rescue
}

const verdictAt = (scenario: Scenario, { path, along }: Rescue, value: number): string =>
  run(editedBy(scenario, [{ path, value }, ...along]), STRATEGY).result.verdict

it('a web pulled too little is saved by more current, up to where it is stretched: the border holds on both sides', () => {
  const slack = editedBy(WEB_PRESETS[1]!.scenario, [
    { path: 'line.ramps', value: [] },
    { path: 'run.duration', value: 1.6 },
    { path: 'web.slack', value: 0.002 },
    { path: LIMIT, value: 0.9 },
  ])
  const rescue = rescueOf(slack, LIMIT)
  expect(rescue).toMatchObject({ becomes: 'taut', cost: 'setting' })
  expect(verdictAt(slack, rescue, rescue.value!)).toBe('taut')
  const { from, to } = rescue.interval!
  expect(verdictAt(slack, rescue, from * 1.01)).toBe('taut')
  expect(verdictAt(slack, rescue, from * 0.96)).toBe('slack')
  expect(verdictAt(slack, rescue, to * 0.99)).toBe('taut')
  expect(verdictAt(slack, rescue, to * 1.04)).toBe('stretched')
  expect(inPlainSpaces(rescueSentence(slack, rescue, wordingOf('si')))).toMatch(/^Taut from 1\.\d+ A to [12]\.\d+ A\./)
}, 120_000)
