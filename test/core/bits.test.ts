/** Constants of a run are the same bits in every engine only where no operation makes them that engines round differently. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../../.tools/setup.mjs'

/** Rooms of which a run is made, constants and all. */
const ROOMS = ['core', 'axis', 'control', 'job', 'strategy', 'cycle', 'model', 'run']

/** ECMA-262 leaves these to the engine ("implementation-approximated"), powers included: √ alone is exact by IEEE 754. */
const APPROXIMATE =
  /\S \*\*=? \S|Math\.(?:a?cosh?|a?sinh?|a?tanh?|atan2|cbrt|exp|expm1|hypot|log|log10|log1p|log2|pow)\b/

const isComment = (line: string) => /^\s*(?:\/?\*|\/\/)/.test(line)

describe('what a run is made of', () => {
  it.each(ROOMS)('sim/%s uses nothing that engines round differently', (room) => {
    const folder = join(root, 'sim', room)
    const found = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .flatMap((name) =>
        readFileSync(join(folder, name), 'utf8')
          .split('\n')
          .filter((line) => !isComment(line) && APPROXIMATE.test(line))
          .map((line) => `${name}: ${line.trim()}`),
      )
    expect(found).toEqual([])
  })
})
