/**
 * The share of a rare failure by the search against brute force: 100,000 real grips of parts drawn at random, by the command line on all
 * cores. It takes long, so only who asks for it has it run.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { goal, row } from './report.ts'

const GRIPS = 100_000
const SEEDS = [1, 2, 3]
const STRATEGY = ['--strategy', 'current-clamp', '--format', 'json']

/** A short grip by an axis with friction; about 1 part in 1,000 breaks. */
const RARE = {
  jaws: { opening: 0.074 },
  run: { duration: 0.4 },
  arm: { gravity: 'across', lift: 0.25, moves: [] },
  part: { crackForce: 92 },
  spread: {
    varies: [
      { path: 'part.crackForce', law: 'lognormal', factor: 1.2 },
      { path: 'part.stiffness', law: 'lognormal', factor: 1.15 },
      { path: 'part.mass', law: 'normal', sd: 0.03, share: true },
      { path: 'approach.speed', law: 'normal', sd: 0.03, share: true },
      { path: 'actuator.transmission.coulomb', law: 'uniform', half: 0.3, share: true },
      { path: 'jaws.friction.static', law: 'lognormal', factor: 1.5 },
    ],
  },
}

export function brute(): void {
  const folder = mkdtempSync(join(tmpdir(), 'jawbench-'))
  try {
    const file = join(folder, 'rare.json')
    writeFileSync(file, JSON.stringify(RARE))
    const all = ['--grips', String(GRIPS), '--sampling', 'random', '--drivers', '0']
    const { fit } = asked('spread', file, ...STRATEGY, ...all).results[0]
    const [low, high] = [1 - fit.high, 1 - fit.low]
    row('fail of 100,000, one by one', `${GRIPS - fit.count} (${low.toExponential(2)} to ${high.toExponential(2)})`)
    for (const seed of SEEDS) compare(asked('rare', file, ...STRATEGY, '--seed', String(seed)), seed, low, high)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Two intervals of 95 % of one truth overlap, but for one time in a hundred or so. */
function compare({ share, variation, grips }: Found, seed: number, low: number, high: number): void {
  const factor = Math.exp(1.96 * Math.sqrt(Math.log1p(variation ** 2)))
  const meet = share / factor <= high && share * factor >= low
  const told = `${share.toExponential(2)} (variation ${variation.toFixed(2)}), ${grips} grips`
  goal(`by the search, seed ${seed}`, told, 'intervals meet', meet)
}

interface Found {
  share: number
  variation: number
  grips: number
}

function asked(...command: string[]) {
  const { stdout, status } = spawnSync(process.execPath, ['.tools/jawbench.mjs', ...command], {
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
    maxBuffer: 1e9,
  })
  if (status !== 0) throw new Error(`${command[0]} ended with ${status}`)
  return JSON.parse(stdout)
}
