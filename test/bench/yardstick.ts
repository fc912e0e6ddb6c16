/**
 * What a grip costs beside the same amount of arithmetic written flat in C (`yardstick/grip.c`), which shares nothing with the
 * simulator: plant, drive, noise, heat, arm and a record of 16 channels. The two take turns in one process that has run every preset
 * before, as the page's workers have; both are told in processor time, and the ratio of neighbours counts.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import base64 from 'virtual:core'
import {
  type Core,
  compiledCore,
  judgeGrip,
  PRESETS,
  STRATEGIES,
  type StrategyId,
  simulateGrip,
} from '../../sim/index.ts'
import { processorTime } from './clock.ts'
import { goal, row } from './report.ts'
import { least, median } from './stats.ts'

const WITH_RECORD = 1.6
const WITHOUT_RECORD = 1.3
const ROUNDS = 9
/** Grips in a round, of which the quickest counts, as in the yardstick. */
const GRIPS = 12
const COMPILER = ['cc', '-O3', '-march=native', '-ffp-contract=off']

const { scenario } = PRESETS[0]!

export function yardstick(): void {
  const folder = mkdtempSync(join(tmpdir(), 'jawbench-'))
  try {
    const program = join(folder, 'grip')
    const [compiler, ...flags] = COMPILER as [string, ...string[]]
    const { status } = spawnSync(compiler, [...flags, '-o', program, 'test/bench/yardstick/grip.c', '-lm'])
    if (status === 0) compare(program)
    else row('a grip / C', 'not measured: there is no C compiler here')
  } finally {
    rmSync(folder, { recursive: true })
  }
}

function compare(program: string): void {
  const exports = new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports
  const core = compiledCore(exports)
  for (const preset of PRESETS) for (const { id } of STRATEGIES) simulateGrip(preset.scenario, id, { core })
  for (const { id } of STRATEGIES) {
    told(program, `${id}, traces and hash`, WITH_RECORD, () => simulateGrip(scenario, id, { core }))
    told(program, `${id}, figures only`, WITHOUT_RECORD, () => judged(id, core))
  }
}

const judged = (id: StrategyId, core: Core) => judgeGrip(scenario, id, { core })

function told(program: string, label: string, bound: number, grip: () => unknown): void {
  const rounds = Array.from({ length: ROUNDS }, () => {
    const before = inC(program)
    const ours = least(Array.from({ length: GRIPS }, () => 1e3 * processorTime(grip)))
    return { ours, ratio: ours / (0.5 * (before + inC(program))) }
  })
  const ratio = median(rounds.map((round) => round.ratio))
  goal(`${label} / C`, ratio.toFixed(2), `≤ ${bound}`, ratio <= bound)
}

/** Milliseconds of processor time that a grip takes in C, at its best, with as many plant steps a sample as the simulator takes. */
function inC(program: string): number {
  const said = execFileSync(program, [String(STEPS)], { encoding: 'utf8' })
  return Number(/ms a grip ([\d.]+)/.exec(said)?.[1])
}

const STEPS = Math.round(1 / scenario.drive.currentRate / judgeGrip(scenario, 'current-clamp').result.step)
