// npm run mutate -- --count N --seed S --in FOLDER …: breaks lines of the simulator one at a time, in a copy of the tree, and says
// which of them neither the compiler nor a test misses. Ends with exit code 1 if a line could be broken unnoticed.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { text } from 'node:stream/consumers'
import { parseArgs } from 'node:util'
import { draw, mutantsOf } from './mutants.mjs'
import { copyTree, makeScratch, scratch } from './scratch.mjs'
import { endWithReader, main, programOf, SetupError } from './setup.mjs'

const tree = join(scratch, 'tree')

/** A broken line may make a test run for ever; none that is sound takes a tenth of this [ms]. */
const ENDLESS = 3_600_000

endWithReader()
await main(async () => {
  const { values } = parseArgs({
    options: {
      count: { type: 'string', default: '30' },
      seed: { type: 'string', default: '1' },
      in: { type: 'string', multiple: true, default: ['sim'] },
    },
  })
  const [count, seed] = [values.count, values.seed].map(Number)
  if (!Number.isInteger(count) || !Number.isInteger(seed))
    throw new SetupError('--count and --seed take whole numbers.')
  makeScratch()
  copyTree(tree)
  const files = sources().filter((file) => values.in.some((folder) => file.startsWith(`${folder}/`)))
  const drawn = draw(files.map(withMutants), count ?? 0, seed ?? 0)
  if (drawn.length === 0) throw new SetupError(`Nothing can be broken in ${values.in.join(', ')}.`)

  console.log('Running all unit tests on the sound tree …')
  const red = await redBy()
  if (red) throw new SetupError(`The tests are red before anything is broken. ${red}`)
  let survivors = 0
  for (const [index, { file, mutant }] of drawn.entries()) {
    const killer = await trial(file, mutant)
    if (!killer) survivors++
    const place = `${index + 1}/${drawn.length} ${file}:${mutant.line}`
    console.log(
      `${killer ? 'killed  ' : 'SURVIVED'} ${place}  ${short(mutant.from)} → ${short(mutant.to)}  ${killer ?? ''}`,
    )
  }
  console.log(`\n${drawn.length - survivors} of ${drawn.length} killed, ${survivors} survived (seed ${seed})`)
  if (survivors > 0) process.exitCode = 1
})

/** The simulator's sources in the copy. */
function sources() {
  return readdirSync(join(tree, 'sim'), { recursive: true, encoding: 'utf8' })
    .map((name) => `sim/${name.replaceAll('\\', '/')}`)
    .filter((file) => file.endsWith('.ts') && !/\.(d|wasm)\.ts$/.test(file))
    .sort()
}

function withMutants(/** @type {string} */ file) {
  return { file, mutants: mutantsOf(readFileSync(join(tree, file), 'utf8')) }
}

/**
 * Breaks a place of the copy, asks the compiler, as `npm test` does, tries the tests nearest to it first and mends it again.
 * @returns {Promise<string | null>} what went red, if anything did
 */
async function trial(/** @type {string} */ file, /** @type {import('./mutants.mjs').Mutant} */ { start, end, to }) {
  const path = join(tree, file)
  const sound = readFileSync(path, 'utf8')
  writeFileSync(path, sound.slice(0, start) + to + sound.slice(end))
  try {
    return (await mistyped()) ?? (await redBy(...nearest(file))) ?? (await redBy('related', file)) ?? (await redBy())
  } finally {
    writeFileSync(path, sound)
  }
}

/** What the compiler says first; null if nothing. */
async function mistyped() {
  const how = ['-p', 'tsconfig.sim.json', '--incremental', 'false', '--pretty', 'false']
  const compiler = spawn(process.execPath, [programOf('typescript', 'bin/tsc'), ...how], {
    cwd: tree,
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  const [said] = await Promise.all([text(compiler.stdout), once(compiler, 'exit')])
  return said.split('\n')[0] || null
}

/** The tests of the file itself, or of the nearest room that has any. */
function nearest(/** @type {string} */ file) {
  const own = file.replace(/^sim\//, 'test/').replace(/\.ts$/, '')
  for (let place = own; place !== 'test'; place = dirname(place)) {
    if (existsSync(join(tree, `${place}.test.ts`))) return [`${place}.test.ts`]
    if (place !== own && existsSync(join(tree, place))) return [`${place}/`]
  }
  return ['related', file]
}

/** The first test that goes red, or what else is wrong; null if all are green. */
async function redBy(/** @type {string[]} */ ...which) {
  const report = join(scratch, 'report.json')
  writeFileSync(report, '')
  const vitest = programOf('vitest', 'vitest.mjs')
  const how = ['--run', '--bail=1', '--passWithNoTests', '--reporter=json', `--outputFile=${report}`]
  const child = spawn(process.execPath, [vitest, ...which, ...how], { cwd: tree, stdio: 'ignore', timeout: ENDLESS })
  const [status, signal] = await once(child, 'exit')
  if (signal) return 'runs without end'
  if (status === 0) return null
  const told = readFileSync(report, 'utf8')
  const { testResults = [] } = told ? JSON.parse(told) : {}
  for (const { name, status: state, assertionResults } of testResults) {
    if (state !== 'failed') continue
    const failed = assertionResults.find((/** @type {{ status: string }} */ test) => test.status === 'failed')
    return `${name.replace(`${tree}/`, '')}: ${failed?.fullName ?? 'does not load'}`
  }
  return 'the tests do not start'
}

function short(/** @type {string} */ text) {
  const line = text.replaceAll(/\s+/g, ' ')
  return `\`${line.length > 40 ? `${line.slice(0, 39)}…` : line}\``
}
