// Installs the packages once per lock file: a stamp in node_modules remembers which lock was installed.
// Uses nothing but Node itself, because it runs before there is anything else. All output goes to stderr.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { alone } from './lock.mjs'

export const root = dirname(dirname(fileURLToPath(import.meta.url)))
export const cache = join(root, 'node_modules/.cache/jawbench')

/** A program of an installed package; of a copy of this tree, the packages lie in the folders above. */
export const programOf = (/** @type {string} */ name, /** @type {string} */ file) =>
  join(dirname(createRequire(import.meta.url).resolve(`${name}/package.json`)), file)

/** A failure of the set-up that one plain sentence explains. */
export class SetupError extends Error {}

/** Installs what the lock file names unless that was done before. Throws a SetupError if npm fails. */
export async function ensureInstalled() {
  const lock = readFileSync(join(root, 'package-lock.json'))
  const wanted = `${createHash('sha256').update(lock).digest('hex')} ${process.platform}-${process.arch}\n`
  const stamp = join(root, 'node_modules/.lock-stamp')
  const done = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted
  if (!done()) await alone(root, 'install', () => done() || install(stamp, wanted))
}

function install(/** @type {string} */ stamp, /** @type {string} */ wanted) {
  console.error('Installing packages …')
  const npm = process.env.npm_execpath
  const result = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, 'ci'], { cwd: root, stdio: ['ignore', 2, 2] })
    : spawnSync('npm', ['ci'], { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' })
  if (result.status !== 0) throw new SetupError('The packages could not be installed: npm ci failed, see above.')
  writeFileSync(stamp, wanted)
}

/** Runs a script's main function; an error goes to stderr (of a SetupError the sentence alone) and makes the exit code 1. */
export async function main(/** @type {() => unknown} */ run) {
  try {
    await run()
  } catch (error) {
    console.error(error instanceof SetupError ? error.message : error)
    process.exitCode = 1
  }
}

/** A reader that has seen enough ends a script that has nothing else to do than to speak to it. */
export function endWithReader() {
  process.stdout.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
    if (error.code !== 'EPIPE') console.error(error.message)
    process.exit(1)
  })
}
