import { describe, expect, it } from 'vitest'
import { core } from '../../sim/cli/core.ts'
import { Block, State } from '../../sim/core/block.ts'
import { ALL_PRESETS, jobOf, type Scenario, strategiesOn } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'

/** The smallest number that IEEE 754 keeps with all its digits (binary64): 2^−1022. A product of a smaller one takes a processor as long as a hundred others. */
const SMALLEST_NORMAL = 2 ** -1022

/** Paths of what moves and lies among the subnormal numbers. */
function subnormal(block: Block, path: string): string[] {
  return Object.entries(block).flatMap(([name, value]) => {
    if (value instanceof Block) return subnormal(value, `${path}.${name}`)
    const tiny = typeof value === 'number' && value !== 0 && Math.abs(value) < SMALLEST_NORMAL
    return block instanceof State && tiny ? [`${path}.${name}`] : []
  })
}

describe('what comes to rest in a run comes to 0, and nothing stays among the subnormal numbers', () => {
  it.each(ALL_PRESETS.map(({ id, scenario }): [string, Scenario] => [id, scenario]))('%s', (_, scenario) => {
    for (const strategy of strategiesOn(jobOf(scenario))) {
      const model = modelOf(scenario, strategy)
      const running = core.lay(model)
      running.begin(model.samples)
      const found = new Set<string>()
      for (let done = 0; done < model.samples; done += 100) {
        running.advance(100)
        for (const path of subnormal(running.bench(), 'bench')) found.add(path)
      }
      expect([...found], strategy.id).toEqual([])
    }
  })
})
