import { describe, expect, it } from 'vitest'
import { reproductionOf } from '../../../../app/views/report/reproduce.ts'
import { ALL_PRESETS, editScenario, PRESETS, type Scenario } from '../../../../sim/index.ts'

const { scenario: base } = PRESETS[0]!
const edited = (...edits: { path: string; value: unknown }[]): Scenario => {
  const checked = editScenario(base, edits)
  if (!checked.ok) throw new Error('refused')
  return checked.scenario
}

describe('how a report is reproduced', () => {
  it('is a command on a preset with what was changed', () => {
    expect(reproductionOf(base, base)).toEqual({ command: 'jawbench grip teapot' })
    const changed = edited({ path: 'part.mass', value: 1 }, { path: 'arm.gravity', value: 'none' })
    expect(reproductionOf(base, changed)).toEqual({
      command: 'jawbench grip teapot --set part.mass=1 --set arm.gravity=none',
    })
  })

  it('is a command of the job', () => {
    for (const { id, scenario } of ALL_PRESETS)
      expect(reproductionOf(scenario, scenario)).toEqual({ command: `jawbench ${scenario.job} ${id}` })
    const named = { ...ALL_PRESETS.at(-1)!.scenario, name: 'Ours' }
    expect(reproductionOf(named, named)).toEqual({ file: 'ours.json', command: 'jawbench web ours.json' })
  })

  it('is the scenario’s file where a command would not say it', () => {
    const file = 'teapot-on-a-ball-screw.json'
    const moved = edited({ path: 'arm.moves', value: [] })
    for (const [from, scenario] of [
      [base, moved],
      [moved, moved],
    ] as const)
      expect(reproductionOf(from, scenario)).toEqual({ file, command: `jawbench grip ${file}` })
  })
})
