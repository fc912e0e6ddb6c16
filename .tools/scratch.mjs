// A folder of its own for each run, in test-results; those of runs that have ended are removed at the next one.
import { cpSync, existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import { isRunning } from './processes.mjs'
import { cache, root } from './setup.mjs'

const results = join(root, 'test-results')

/** Path of this run's folder. */
export const scratch = join(results, String(process.pid))

/** Makes this run's folder; several threads of one process share it. */
export function makeScratch() {
  mkdirSync(results, { recursive: true })
  for (const name of readdirSync(results))
    if (!isRunning(Number(name)) || isBefore(name)) rmSync(join(results, name), { recursive: true, force: true })
  mkdirSync(scratch, { recursive: true })
}

/** Whether a folder is that of an earlier process which had our id. */
const isBefore = (/** @type {string} */ name) =>
  name === String(process.pid) && statSync(scratch).birthtimeMs < Date.now() - 1000 * process.uptime()

/** What a copy of the tree does without: made things, and packages, which are found in the folders above it. */
const LEFT = ['node_modules', 'dist', 'lib', 'coverage', 'test-results', 'playwright-report', '.git']

/** Copies the sources to a folder inside this run's, where all tools work on the copy alone. */
export function copyTree(/** @type {string} */ tree) {
  for (const name of readdirSync(root))
    if (!LEFT.includes(name)) cpSync(join(root, name), join(tree, name), { recursive: true })
  // The stamp says that the packages are installed.
  mkdirSync(join(tree, 'node_modules'))
  cpSync(join(root, 'node_modules/.lock-stamp'), join(tree, 'node_modules/.lock-stamp'))
  // What is compiled bears a fingerprint of its sources: the core is compiled again only where they are changed in the copy.
  for (const name of existsSync(cache) ? readdirSync(cache) : [])
    if (/^core-\w+\.wasm$/.test(name)) cpSync(join(cache, name), join(tree, relative(root, cache), name))
}
