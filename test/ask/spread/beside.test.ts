/** What varies from part to part changes nothing for the one part of the file, whatever is asked of it. */
import { describe, expect, it } from 'vitest'
import { explain } from '../../../sim/ask/why.ts'
import { run } from '../../../sim/cli/core.ts'
import {
  AXIS_PRESETS,
  editScenario,
  PRESETS,
  type Scenario,
  STRATEGIES,
  usualSpreads,
  wantedEffort,
} from '../../../sim/index.ts'
import { explained } from '../../grip/remembered.ts'

function spreadOf(scenario: Scenario): Scenario {
  const edited = editScenario(scenario, [
    { path: 'spread.varies', value: usualSpreads(scenario).map(({ varied }) => varied) },
  ])
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults))
  return edited.scenario
}

describe('beside a spread of everything that usually varies', () => {
  it.each(PRESETS)(
    'why is the same: $id',
    ({ scenario }) => {
      const spread = spreadOf(scenario)
      expect(spread.spread.varies.length).toBeGreaterThan(8)
      const id = STRATEGIES[0]!.id
      const { run: _, ...alone } = explained(scenario, id)
      const { run: __, ...beside } = explain(spread, id, alone.verdict, run)
      expect(beside).toEqual(alone)
    },
    60_000,
  )

  it('every axis can still be put on the bench', () => {
    const spread = spreadOf(PRESETS[0]!.scenario)
    for (const { actuator, title } of AXIS_PRESETS) {
      const edited = editScenario(spread, [{ path: 'actuator', value: actuator }])
      const bare = editScenario(PRESETS[0]!.scenario, [{ path: 'actuator', value: actuator }])
      expect(edited.ok, title).toBe(bare.ok)
    }
    expect(wantedEffort(spread)).toBe(wantedEffort(PRESETS[0]!.scenario))
  })
})
