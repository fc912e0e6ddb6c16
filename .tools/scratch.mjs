// A folder of its own for each run, in test-results; those of runs that have ended are removed at the next one.
import { mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { isRunning } from './processes.mjs'
import { root } from './setup.mjs'

const results = join(root, 'test-results')

/** Path of this run's folder. */
export const scratch = join(results, String(process.pid))

/** Makes this run's folder. */
export function makeScratch() {
  mkdirSync(results, { recursive: true })
  for (const name of readdirSync(results))
    if (!isRunning(Number(name)) || name === String(process.pid)) rmSync(join(results, name), { recursive: true })
  mkdirSync(scratch)
}
