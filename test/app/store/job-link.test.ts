import { expect, it } from 'vitest'
import { linkToScenario, scenarioToLink } from '../../../app/store/link.ts'
import { PRESETS } from '../../../sim/index.ts'
import { CAP_PRESETS, PRESS_PRESETS } from '../../../sim/others.ts'

it.each([...PRESS_PRESETS, ...CAP_PRESETS].map(({ id, scenario }) => [id, scenario] as const))(
  'the link of %s opens the same scenario',
  (_, scenario) => {
    expect(linkToScenario(scenarioToLink(scenario))).toEqual({ ok: true, scenario })
  },
)

it('a link without a job is one of a grip', () => {
  const { scenario } = PRESETS[0]!
  const opened = linkToScenario(scenarioToLink(scenario))
  expect(opened.ok && opened.scenario.job).toBe('grip')
})
