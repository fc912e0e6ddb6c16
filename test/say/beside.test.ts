import { expect, it } from 'vitest'
import { beside } from '../../sim/say/beside.ts'
import { inPlainSpaces } from '../../sim/say/figure.ts'
import { wordingOf } from '../../sim/say/wording.ts'

it('a figure that misses its limit by less than its digits show says on which side it lies', () => {
  for (const [value, limit, said] of [
    [15.2, 15.8, '15.2 N'],
    [15.79, 15.8, 'just under 15.8 N'],
    [15.81, 15.8, 'just over 15.8 N'],
  ] as const)
    expect(inPlainSpaces(beside(wordingOf('si').force, value, limit))).toBe(said)
})
