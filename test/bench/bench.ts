/**
 * npm run bench [-- PART …]: each part in a process of its own, so that one leaves no compiled code, heap or load to the next.
 * Bounds are ratios within one run or counts; only start, opening, slider and study are told by the clock, with the
 * machine beside them.
 */
import '../../sim/others.ts'
import { arch, availableParallelism, cpus, loadavg, platform } from 'node:os'
import { brute } from './brute.ts'
import { coverage } from './coverage.ts'
import { loops } from './loops.ts'
import { memory } from './memory.ts'
import { odex } from './odex.ts'
import { opening } from './opening.ts'
import { part } from './part.ts'
import { RUN, spawnPart } from './process.ts'
import { RESCUE_SAMPLES, rescue } from './rescue.ts'
import { scatter } from './scatter.ts'
import { slider } from './slider.ts'
import { start } from './start.ts'
import { steps } from './steps.ts'
import { study } from './study.ts'
import { yardstick } from './yardstick.ts'

const PARTS: Record<string, () => void | Promise<void>> = {
  yardstick,
  steps,
  odex,
  memory,
  loops,
  rescue,
  start,
  opening,
  slider,
  study,
  scatter,
  part,
  coverage,
  brute,
}

/** Takes tens of minutes. */
const LONG = ['coverage', 'brute']

const asked = process.argv.slice(2)
const own = asked.find((argument) => argument.startsWith(RUN))?.slice(RUN.length)
const unknown = asked.filter((name) => !name.startsWith(RUN) && !(name in PARTS))

if (own !== undefined) await (PARTS[own] ?? RESCUE_SAMPLES[own])?.()
else if (unknown.length > 0) {
  console.error(`Unknown: ${unknown.join(', ')}. Parts: ${Object.keys(PARTS).join(', ')}.`)
  process.exitCode = 2
} else runAll(asked.length > 0 ? asked : Object.keys(PARTS).filter((name) => !LONG.includes(name)))

function runAll(names: string[]): void {
  const load = loadavg()[0]!.toFixed(1)
  console.log(`${cpus()[0]?.model.trim() || arch()}, ${availableParallelism()} processors, load ${load}`)
  console.log(`${platform()}, Node ${process.version}`)
  for (const name of names) {
    console.log(`\n── ${name}`)
    if (spawnPart(name, 'inherit').status !== 0) {
      console.log(`${name} did not run to its end.`)
      process.exitCode = 1
    }
  }
}
