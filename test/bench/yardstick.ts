/**
 * What a grip costs beside the same amount of arithmetic written flat in C (`yardstick/grip.c`), which shares nothing with the
 * simulator: plant, drive, noise, heat, arm and a record of 16 channels; by sensed force also gauge, force loop and velocity loop. The
 * goals are held against it as it was written first. It does not compute what has come since: bristles that are elastic before they give
 * way, what holds beside what works against it, power from the bus and the hottest winding once a sample. With these ("grown") it is told
 * beside; what it still lacks are two channels, the turn of a part held off its centre, which the opening preset's is not, and rails. Nor
 * does it stop at a threshold: a grip that does is held against its clamp grip, whose bristles rest while those of a stopped axis creep.
 * A batch is many drawn grips one after another, as a study runs them. Two at a time in the two lanes of a vector would need every
 * branch of the step as a choice between values, a source of its own beside the one that both executions share. The two take turns in
 * one process that has run every preset before, as the page's workers have; both are told in processor time. Each does the same work
 * every time, so the least of all its rounds is what the work takes, and the rest is what the machine's other tenants took (here a grip
 * takes once and again twice its time for some tenths of a second); the median of the rounds is told beside.
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
/** Grips in a batch, and the spread of the part's mass and stiffness in it. */
const BATCH = 12
const SPREAD = 0.2
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

interface Trial {
  label: string
  strategy: StrategyId
  bound: number
  grip(): unknown
}

function compare(program: string): void {
  const exports = new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports
  const core = compiledCore(exports)
  for (const preset of PRESETS) for (const { id } of STRATEGIES) simulateGrip(preset.scenario, id, { core })
  const trials = [
    ...STRATEGIES.flatMap(({ id: strategy }): Trial[] => [
      {
        label: `${strategy}, traces and hash`,
        strategy,
        bound: WITH_RECORD,
        grip: () => simulateGrip(scenario, strategy, { core }),
      },
      {
        label: `${strategy}, figures only`,
        strategy,
        bound: WITHOUT_RECORD,
        grip: () => judgeGrip(scenario, strategy, { core }),
      },
    ]),
    batch(core),
  ]
  // All trials take their turns in each round: what a neighbour takes for some seconds does not fall on one of them alone.
  const rounds = Array.from({ length: ROUNDS }, () => trials.map((trial) => measure(program, trial)))
  for (const [n, { label, bound }] of trials.entries()) {
    tell(
      label,
      bound,
      rounds.map((round) => round[n]!),
    )
  }
  row('two grips at a time, in the lanes of a vector', 'not done: it would be a source of its own')
}

function batch(core: Core): Trial {
  const drawn = Array.from({ length: BATCH }, (_, n) => {
    const factor = 1 + SPREAD * ((2 * n) / (BATCH - 1) - 1)
    const { mass, stiffness } = scenario.part
    const part = { ...scenario.part, mass: mass * factor, stiffness: stiffness / factor }
    return { ...scenario, part, run: { ...scenario.run, seed: n } }
  })
  let next = 0
  const strategy = 'current-clamp'
  const grip = () => judgeGrip(drawn[next++ % BATCH]!, strategy, { core })
  return { label: `${strategy}, a grip of a batch, a core`, strategy, bound: WITHOUT_RECORD, grip }
}

/** Milliseconds of processor time that a grip takes. */
interface Times {
  ours: number
  flat: number
  grown: number
}

function measure(program: string, { strategy, grip }: Trial): Times {
  const before = inC(program, strategy)
  const ours = least(Array.from({ length: GRIPS }, () => 1e3 * processorTime(grip)))
  return { ours, flat: least([before, inC(program, strategy)]), grown: inC(program, strategy, 'grown') }
}

function tell(label: string, bound: number, rounds: Times[]): void {
  const ours = least(rounds.map((round) => round.ours))
  const over = (of: 'flat' | 'grown') => (ours / least(rounds.map((round) => round[of]))).toFixed(2)
  goal(`${label} / C`, over('flat'), `≤ ${bound}`, Number(over('flat')) <= bound)
  row('  / C grown; ms', `${over('grown')}; ${ours.toFixed(1)}`)
  row('  / C, median of the rounds', median(rounds.map((round) => round.ours / round.flat)).toFixed(2))
}

/** Milliseconds of processor time that a grip takes in C, at its best, with as many plant steps a sample as the simulator takes. */
function inC(program: string, id: StrategyId, ...words: 'grown'[]): number {
  const sensed = id === 'sensed-force' ? ['sensed'] : []
  const said = execFileSync(program, [String(STEPS), ...sensed, ...words], { encoding: 'utf8' })
  return Number(/ms a grip ([\d.]+)/.exec(said)?.[1])
}

const STEPS = Math.round(1 / scenario.drive.currentRate / judgeGrip(scenario, 'current-clamp').result.step)
