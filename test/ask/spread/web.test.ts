/** Studies of webs against a closed form: a roll without friction under a current pulls with T = K·I/r, so all that is asked has an answer. */
import { describe, expect, it } from 'vitest'
import { answerOf } from '../../../sim/ask/spread/answer.ts'
import { batchesOf, batchRunner, type SpreadStudy } from '../../../sim/ask/spread/batch.ts'
import { runMap } from '../../../sim/ask/spread/run-map.ts'
import { runRare } from '../../../sim/ask/spread/run-rare.ts'
import { count, emptyTally } from '../../../sim/ask/spread/tally.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { JOBS, type Scenario } from '../../../sim/index.ts'
import { holdSentence } from '../../../sim/say/spread.ts'
import { IDEAL, webOf } from '../../job/web/support.ts'

const CONSTANT = 'actuator.motor.torqueConstant'

/** 50 N by 5 A at 1 N·m/A on 0.1 m; the constant is off by 3 % (normal), so the tension is. */
const pulling = (least: number): Scenario =>
  webOf(IDEAL, {
    window: { least, from: 0.6 },
    run: { duration: 0.8 },
    spread: { varies: [{ path: CONSTANT, law: 'normal', sd: 0.03, share: true }], together: [] },
  })

describe('a study of webs', () => {
  it('counts as taut what lies above the window’s lower edge, one deviation below the mean: Φ(1) = 84.13 %', () => {
    const scenario = pulling(48.5)
    const study: SpreadStudy = { scenario, strategies: ['current-clamp'], grips: 256, seed: 1, sampling: 'sobol' }
    const tally = emptyTally('web', 'current-clamp', 1)
    const next = batchRunner(study, run)
    for (let batch = 0; batch < batchesOf(study.grips); batch++) count(tally, next(batch, 'current-clamp'))
    const answer = answerOf(scenario, 'sobol', tally)
    expect(Object.keys(answer.shares)).toEqual(JOBS.web.verdicts)
    // 256 Sobol' points of one quantity lie one in each 256th of the law, so a count is off by one at most; one more for what is left of the swing.
    expect(Math.abs(answer.fit.count - 256 * 0.841345)).toBeLessThanOrEqual(2)
    expect(answer.shares.slack!.count).toBe(256 - answer.fit.count)
    expect(holdSentence('web', answer)).toMatch(/^\d+ of 256 are taut \(/)
  })

  it('finds the share that is slack only once in 31,574 webs: Φ(−4) = 3.167e-5', async () => {
    const { rare, likeliest } = await runRare(
      pulling(50 * (1 - 4 * 0.03)),
      { strategy: 'current-clamp', seed: 1, size: 100 },
      crewHere(run),
    )
    if (rare.kind !== 'share') throw new Error(rare.kind)
    expect(Math.abs(rare.share / 3.167e-5 - 1)).toBeLessThan(3 * rare.variation)
    expect(rare.variation).toBeLessThan(0.5)
    expect(likeliest!.find(({ path }) => path === CONSTANT)!.value as number).toBeCloseTo(0.88, 2)
  }, 600_000)

  it('maps taut and slack on either side of K·I = r·T', async () => {
    const { grid } = await runMap(
      pulling(48.5),
      {
        strategy: 'current-clamp',
        x: { path: CONSTANT, from: 0.8, to: 1.25 },
        y: { path: 'strategies.currentClamp.limit', from: 4, to: 6 },
      },
      crewHere(run),
    )
    const wrong = grid.ys.flatMap((limit, row) =>
      grid.xs.filter((constant, column) => {
        const tension = (constant * limit) / 0.1
        if (Math.abs(tension / 48.5 - 1) < 0.002) return false // what is left of the swing
        return (grid.outcomes[row * grid.xs.length + column]!.fate === 'taut') !== tension > 48.5
      }),
    )
    expect(wrong).toEqual([])
    expect(new Set(grid.outcomes.map((outcome) => outcome!.fate))).toEqual(new Set(['taut', 'slack']))
  }, 600_000)
})
