// npm test: every stage in turn, so that one run shows all there is to mend. The last line is always "N passed, N failed".
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { countPlaywright, countVitest } from './counts.mjs'
import { cache, ensureInstalled, root, SetupError } from './setup.mjs'

const totals = { passed: 0, failed: 0 }
/** @type {string[]} What was left out on this machine, and why. */
const notes = []

if (await stage('install', ensureInstalled)) {
  await stage('lock file', checkLock)
  await stage('types', () => run('typescript/bin/tsc', '-b'))
  await stage('lint', () => run('@biomejs/biome/bin/biome', 'check', '--error-on-warnings'))
  await stage('unused code', () => run('knip/bin/knip.js', '--no-progress'))
  await stage('unit tests and checks', unitTests)
  const built = await stage('build', async () => (await import('./build.mjs')).ensureBuilt())
  if (built) await stage('end to end', endToEnd)
}
if (totals.failed > 0) process.exitCode = 1
for (const note of notes) console.log(`\n${note}`)
console.log(`\n${totals.passed} passed, ${totals.failed} failed`)

/** Runs one stage and says whether it went through; one that did not counts as one failed unless it counted by itself. */
async function stage(/** @type {string} */ name, /** @type {() => unknown} */ body) {
  console.log(`\n── ${name}`)
  const failedBefore = totals.failed
  try {
    await body()
  } catch (error) {
    console.error(error instanceof SetupError ? error.message : error)
    if (totals.failed === failedBefore) totals.failed += 1
  }
  return totals.failed === failedBefore
}

/** Runs a package's program; its output goes straight through. */
function run(/** @type {string} */ program, /** @type {string[]} */ ...args) {
  const { status } = spawnSync(process.execPath, [join(root, 'node_modules', program), ...args], {
    cwd: root,
    stdio: 'inherit',
  })
  if (status !== 0) throw new SetupError(`${program} ended with exit code ${status}.`)
}

function checkLock() {
  const lock = readFileSync(join(root, 'package-lock.json'), 'utf8')
  if (lock.includes('"resolved"'))
    throw new SetupError('package-lock.json records registry addresses; .npmrc should prevent that.')
}

function unitTests() {
  const file = join(cache, `vitest-${process.pid}.json`)
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  counted(file, countVitest, () => run('vitest/vitest.mjs', 'run', ...reporters))
}

async function endToEnd() {
  const { reportFile, runEndToEnd } = await import('./playwright.mjs')
  counted(reportFile, countPlaywright, () => {
    const { status, note } = runEndToEnd(['--reporter=list,json'])
    if (note) notes.push(note)
    if (status !== 0) throw new SetupError(`Playwright ended with exit code ${status}.`)
  })
}

/** Adds a test run's counts from its report, also when the run fails. */
function counted(
  /** @type {string} */ file,
  /** @type {(report: any) => import('./counts.mjs').Counts} */ count,
  /** @type {() => void} */ tests,
) {
  rmSync(file, { force: true })
  try {
    tests()
  } finally {
    if (existsSync(file)) {
      const { passed, failed } = count(JSON.parse(readFileSync(file, 'utf8')))
      totals.passed += passed
      totals.failed += failed
      rmSync(file)
    }
  }
}
