/** What it takes to come to the same figures, as short as it can be said. Knows no React. */
import { ALL_PRESETS, readPath, type Scenario } from '../../../sim/index.ts'
import { differingPaths } from '../../read/scenario/changes.ts'
import { fileName } from '../../store/file.ts'

/** More changes than these go into a file. */
const MOST_CHANGES = 6

export type Reproduction = { command: string } | { file: string; command: string }

/** A command where few figures differ from a preset, else the scenario's file. */
export function reproductionOf(base: Scenario, scenario: Scenario): Reproduction {
  const preset = ALL_PRESETS.find((each) => each.scenario === base)
  const paths = preset ? differingPaths([base, scenario]).filter((path) => path !== 'name') : []
  const values = paths.map((path) => readPath(scenario, path))
  const plain = values.every((value) => typeof value !== 'object' && value !== undefined)
  if (preset && plain && paths.length <= MOST_CHANGES) {
    const sets = paths.map((path, i) => ` --set ${path}=${values[i]}`)
    return { command: `jawbench ${scenario.job} ${preset.id}${sets.join('')}` }
  }
  const file = `${fileName(scenario.name)}.json`
  return { file, command: `jawbench ${scenario.job} ${file}` }
}
