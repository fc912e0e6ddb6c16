/** The hostile scenarios of the test run, 20,000 in four files, so that the workers of the run share them. */
import { expect, it } from 'vitest'
import { BLOCK, trial } from './trial.ts'

const RUNS = 20_000
const SEED = 1
const BLOCKS = RUNS / BLOCK / 4

/** The runs of one quarter: 0 … 3. */
export function keepsTheLaws(quarter: number): void {
  it(`${BLOCKS * BLOCK} hostile scenarios keep every law, quarter ${quarter + 1}`, () => {
    for (let block = quarter * BLOCKS; block < (quarter + 1) * BLOCKS; block++) {
      const { runs, breaches } = trial(SEED, block)
      expect(breaches, `npm run hostile -- --seed ${SEED} --block ${block}`).toEqual([])
      expect(runs).toBe(BLOCK)
    }
  })
}
