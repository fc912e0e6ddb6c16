/** Spreads that are sensible to begin with, for the quantities that a scenario has: those of its job, then those of the axis. */
import { jobOf } from '../../job/index.ts'
import type { Job } from '../../job/job.ts'
import { axisUsual } from '../../job/usual.ts'
import { readPath, type Scenario, type Varied } from '../../scenario/index.ts'

export interface UsualSpread {
  varied: Varied
  /** What it stands for, one sentence. */
  why: string
}

/** Those of quantities that the scenario has, and that do not vary yet. */
export const usualSpreads = (scenario: Scenario): UsualSpread[] =>
  usualOf(jobOf(scenario)).flatMap(([path, sizes, why]) => {
    const value = readPath(scenario, path)
    const varies = scenario.spread.varies.some((each) => each.path === path)
    const scaled = sizes.share || sizes.law === 'lognormal'
    if (typeof value !== 'number' || varies || (scaled && value === 0)) return []
    return [{ varied: { path, ...sizes, share: sizes.law === 'lognormal' ? false : sizes.share }, why }]
  })

const usualOf = ({ study, output }: Job) => [...study.usual, ...axisUsual(output)]
