/** npm run hostile -- --count N --seed S [--from B | --block B]: hostile scenarios on every core of the machine, and the laws that they break. */
import '../../sim/others.ts'
import { once } from 'node:events'
import { availableParallelism } from 'node:os'
import { parseArgs } from 'node:util'
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import { BLOCK, type Breach, type Tally, trial } from './trial.ts'

interface Task {
  block: number
  most: number
}

/** Runs after which it is told how far it is. */
const TOLD = 10_000

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '20000' },
    seed: { type: 'string', default: '1' },
    /** The first block, so that a count can go on where another one ended. */
    from: { type: 'string', default: '0' },
    block: { type: 'string' },
  },
})
const seed = whole('seed')
if (isMainThread) await main()
else parentPort!.on('message', ({ block, most }: Task) => parentPort!.postMessage(trial(seed, block, most)))

function whole(name: 'count' | 'seed' | 'from' | 'block'): number {
  const value = Number(values[name])
  if (Number.isInteger(value) && value >= 0) return value
  console.error(`--${name}: given "${values[name]}", allowed a whole number`)
  process.exit(2)
}

async function main() {
  const sum: Tally = { runs: 0, tooLong: 0, breaches: [] }
  const laws = new Set<string>()
  await everywhere(tasks(), ({ block }, { runs, tooLong, breaches }) => {
    sum.runs += runs
    sum.tooLong += tooLong
    sum.breaches.push(...breaches)
    for (const breach of breaches) {
      if (!laws.has(breach.law)) tell(breach, block)
      laws.add(breach.law)
    }
    if (sum.runs % TOLD < BLOCK) console.error(`${sum.runs} runs so far, ${sum.breaches.length} broke a law`)
  })
  console.log(`${sum.runs} runs (seed ${seed}), ${sum.breaches.length} broke a law, ${laws.size} laws broken`)
  if (laws.size > 0) process.exitCode = 1
}

function tasks(): Task[] {
  if (values.block !== undefined) return [{ block: whole('block'), most: BLOCK }]
  const count = whole('count')
  const from = whole('from')
  return Array.from({ length: Math.ceil(count / BLOCK) }, (_, n) => ({
    block: from + n,
    most: Math.min(BLOCK, count - n * BLOCK),
  }))
}

function tell({ law, wrong, strategy, scenario }: Breach, block: number) {
  console.log(`BROKEN: ${law}: ${wrong}`)
  console.log(`  the shortest scenario: ${JSON.stringify(scenario)}`)
  console.log(`  run it: npm run -s jawbench -- grip - --strategy ${strategy}`)
  console.log(`  find it again: npm run hostile -- --seed ${seed} --block ${block}\n`)
}

/** Hands the tasks out, one after another, to a thread on each core. */
async function everywhere(tasks: Task[], done: (task: Task, tally: Tally) => void) {
  const threads = Array.from({ length: Math.min(availableParallelism(), tasks.length) }, async () => {
    const worker = new Worker(new URL(import.meta.url), { argv: process.argv.slice(2) })
    for (let task = tasks.shift(); task; task = tasks.shift()) {
      worker.postMessage(task)
      const [tally] = (await once(worker, 'message')) as [Tally]
      done(task, tally)
    }
    await worker.terminate()
  })
  await Promise.all(threads)
}
