// npm test: every stage, also after one that failed, so that one run shows all there is to mend. What needs the browser runs
// beside what does not. The last line is always "N passed, N failed", with ", N skipped" where something could not be run.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { closingLine, countPlaywright, countVitest } from './counts.mjs'
import { inTurn } from './in-turn.mjs'
import { alone } from './lock.mjs'
import { cache, endWithReader, ensureInstalled, root, SetupError } from './setup.mjs'

/** @typedef {import('./counts.mjs').Counts} Counts */
/** @typedef {{ counts: Counts, write: (text: string) => void }} Stage */

const totals = { passed: 0, failed: 0, skipped: 0 }
/** @type {string[]} What could not be run on this machine, and why. */
const notes = []
const next = inTurn((text) => process.stdout.write(text))
const colours = process.stdout.isTTY && !process.env.NO_COLOR ? { FORCE_COLOR: '1' } : {}

endWithReader()
if (await stage('install', ensureInstalled)) await Promise.all([withoutBrowser(), withBrowser()])
if (totals.failed > 0) process.exitCode = 1
for (const note of notes) console.log(`\n${note}`)
console.log(`\n${closingLine(totals)}`)

async function withoutBrowser() {
  await stage('lock file', checkLock)
  await stage('types', (on) => alone(root, 'types', () => run(on, 'typescript/bin/tsc', '-b')))
  await stage('lint', (on) => run(on, '@biomejs/biome/bin/biome', 'check', '--error-on-warnings'))
  await stage('unused code', (on) => run(on, 'knip/bin/knip.js', '--no-progress'))
  await stage('unit tests and checks', unitTests)
}

async function withBrowser() {
  if (await stage('build', async () => (await import('./build.mjs')).ensureBuilt())) await stage('end to end', endToEnd)
}

/** Runs one stage and says whether it went through; one that did not counts as one failed unless it counted by itself. */
async function stage(/** @type {string} */ name, /** @type {(on: Stage) => unknown} */ body) {
  const { write, end } = next()
  write(`\n── ${name}\n`)
  const counts = { passed: 0, failed: 0, skipped: 0 }
  try {
    await body({ counts, write })
  } catch (error) {
    write(`${error instanceof SetupError ? error.message : error instanceof Error ? error.stack : error}\n`)
    counts.failed ||= 1
  }
  end()
  totals.passed += counts.passed
  totals.failed += counts.failed
  totals.skipped += counts.skipped
  return counts.failed === 0
}

/** Runs a package's program; what it says is the stage's. */
async function run(/** @type {Stage} */ on, /** @type {string} */ program, /** @type {string[]} */ ...args) {
  const child = spawn(process.execPath, [join(root, 'node_modules', program), ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...colours },
  })
  for (const output of [child.stdout, child.stderr]) listen(on, output)
  const [status] = await once(child, 'close')
  if (status !== 0) throw new SetupError(`${program} ended with exit code ${status}.`)
}

function listen(/** @type {Stage} */ on, /** @type {import('node:stream').Readable} */ output) {
  output.setEncoding('utf8').on('data', on.write)
}

function checkLock() {
  const lock = readFileSync(join(root, 'package-lock.json'), 'utf8')
  if (lock.includes('"resolved"'))
    throw new SetupError('package-lock.json records registry addresses; .npmrc should prevent that.')
}

async function unitTests(/** @type {Stage} */ on) {
  const file = join(cache, `vitest-${process.pid}.json`)
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  await counted(on, file, countVitest, () => run(on, 'vitest/vitest.mjs', 'run', ...reporters))
}

async function endToEnd(/** @type {Stage} */ on) {
  const { reportFile, runEndToEnd } = await import('./playwright.mjs')
  await counted(on, reportFile, countPlaywright, async () => {
    const { status, note } = await runEndToEnd(['--reporter=list,json'], ['ignore', 'pipe', 'pipe'], (output) =>
      listen(on, output),
    )
    if (note) notes.push(note)
    if (status !== 0) throw new SetupError(`Playwright ended with exit code ${status}.`)
  })
}

/** Takes a test run's counts from its report, also when the run fails. */
async function counted(
  /** @type {Stage} */ on,
  /** @type {string} */ file,
  /** @type {(report: any) => Counts} */ count,
  /** @type {() => Promise<void>} */ tests,
) {
  rmSync(file, { force: true })
  try {
    await tests()
  } finally {
    if (existsSync(file)) {
      Object.assign(on.counts, count(JSON.parse(readFileSync(file, 'utf8'))))
      rmSync(file)
    }
  }
}
