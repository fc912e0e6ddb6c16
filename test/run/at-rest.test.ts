import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import { Block, State } from '../../sim/core/block.ts'
import { ALL_PRESETS, jobOf, type Scenario, strategiesOn } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'

/** The smallest number that IEEE 754 keeps with all its digits (binary64): 2^−1022. */
const SMALLEST_NORMAL = 2 ** -1022

/** Paths of what moves and lies among the subnormal numbers. */
function subnormal(block: Block, path: string): string[] {
  return Object.entries(block).flatMap(([name, value]) => {
    if (value instanceof Block) return subnormal(value, `${path}.${name}`)
    const tiny = typeof value === 'number' && value !== 0 && Math.abs(value) < SMALLEST_NORMAL
    return block instanceof State && tiny ? [`${path}.${name}`] : []
  })
}

/** Of a run as long as it is, or longer [s]. */
function found(scenario: Scenario, duration = scenario.run.duration): Record<string, string[]> {
  const longer = { ...scenario, run: { ...scenario.run, duration } }
  return Object.fromEntries(
    strategiesOn(jobOf(scenario)).map((strategy) => {
      const model = modelOf(longer, strategy)
      const running = core.lay(model)
      running.begin(model.samples)
      const paths = new Set<string>()
      for (let done = 0; done < model.samples; done += 100) {
        running.advance(100)
        for (const path of subnormal(running.bench(), 'bench')) paths.add(path)
      }
      return [strategy.id, [...paths]]
    }),
  )
}

const nothing = (scenario: Scenario) =>
  Object.fromEntries(strategiesOn(jobOf(scenario)).map(({ id }): [string, string[]] => [id, []]))

describe('what comes to rest in a run comes to 0, and nothing stays among the subnormal numbers', () => {
  it.each(ALL_PRESETS.map(({ id, scenario }): [string, Scenario] => [id, scenario]))('%s', (_, scenario) => {
    expect(found(scenario)).toEqual(nothing(scenario))
  })

  // Their parts swing sideways, and nothing pulls them there once the arm stands.
  it.each(['bushing', 'foam'])('%s, long after the arm has come to rest', (id) => {
    const { scenario } = ALL_PRESETS.find((preset) => preset.id === id)!
    expect(found(scenario, 12)).toEqual(nothing(scenario))
  })
})
