/** When the error by the step leaves a verdict on a closure open. */
import { describe, expect, it } from 'vitest'
import { isClose } from '../../../sim/job/cap/errors.ts'
import type { CapJudgement } from '../../../sim/job/cap/result.ts'

const tight = (margins: Partial<CapJudgement['metrics']>, verdict: CapJudgement['verdict'] = 'tight') =>
  ({ verdict, metrics: margins }) as CapJudgement

describe('a tight closure is close to another verdict', () => {
  it('where a margin is smaller than its error, and not where it is larger', () => {
    expect(isClose(tight({ torqueMargin: 0.1, stripMargin: 0.5 }), { torqueMargin: 0.2, stripMargin: 0.2 })).toBe(true)
    expect(isClose(tight({ torqueMargin: 0.5, stripMargin: 0.1 }), { torqueMargin: 0.2, stripMargin: 0.2 })).toBe(true)
    expect(isClose(tight({ torqueMargin: 0.5, stripMargin: 0.5 }), { torqueMargin: 0.2, stripMargin: 0.2 })).toBe(false)
  })

  it('not where there is neither margin nor error', () => {
    expect(isClose(tight({ torqueMargin: null, stripMargin: null }), { torqueMargin: 0.2, stripMargin: 0.2 })).toBe(
      false,
    )
    expect(isClose(tight({ torqueMargin: 0.1, stripMargin: 0.1 }), {})).toBe(false)
  })

  it('one that is not tight is not', () => {
    expect(isClose(tight({ torqueMargin: -0.1 }, 'loose'), { torqueMargin: 0.2 })).toBe(false)
  })
})
