/** A run is the same to the last bit in Node and in the simulator worker of the built page, whatever the browser's engine. */
import '../sim/others.ts'
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import type { Page } from '@playwright/test'
import type { Answer, GripJob, Request } from '../app/worker/messages.ts'
import {
  ALL_PRESETS,
  AXIS_PRESETS,
  fitAxis,
  type GripResult,
  jobOf,
  PRESETS,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  strategiesOn,
} from '../sim/index.ts'
import { expect, test } from './support.ts'

type Outcome = Pick<GripResult, 'hash' | 'verdict' | 'metrics' | 'events'>

interface Case {
  name: string
  scenario: Scenario
  strategies: StrategyId[]
}

const all = STRATEGIES.map(({ id }) => id)

test('every preset by every strategy', ({ page }) =>
  same(
    page,
    PRESETS.map(({ id, scenario }) => ({ name: id, scenario, strategies: all })),
  ))

test('every preset of the other jobs by every strategy that makes sense on it, one cycle each', ({ page }) =>
  same(
    page,
    ALL_PRESETS.filter(({ scenario }) => scenario.job !== 'grip').map(({ id, scenario }) => ({
      name: id,
      scenario: { ...scenario, run: { ...scenario.run, cycle: null } },
      strategies: strategiesOn(jobOf(scenario)).map((strategy) => strategy.id),
    })),
    TWINS,
  ))

/** The hinge is seated by depth, before a threshold trips or a clamp limits: one run by two strategies. */
const TWINS = 1

test('every generic axis under the first preset, each by one strategy', ({ page }) =>
  same(
    page,
    AXIS_PRESETS.map(({ id, actuator }, index) => {
      const fitted = fitAxis(PRESETS[0]!.scenario, actuator)
      if (!fitted.ok) throw new Error(`${id} does not go with ${PRESETS[0]!.id}`)
      return { name: id, scenario: fitted.scenario, strategies: [all[index % all.length]!] }
    }),
  ))

async function same(page: Page, cases: Case[], twins = 0) {
  await page.goto('./')
  const [inPage, inNode] = await Promise.all([runInPage(page, cases), once(() => runInNode(cases))])
  const names = cases.flatMap(({ name, strategies }) => strategies.map((strategy) => `${name}, ${strategy}`))
  expect(new Set(inNode.map(({ hash }) => hash)).size, 'runs differ among themselves').toBe(names.length - twins)
  const named = (outcomes: Outcome[]) => Object.fromEntries(names.map((name, index) => [name, outcomes[index]]))
  expect(named(inPage)).toEqual(named(inNode))
}

/** What a test computes is kept for the same test in the next browser; the folder is emptied before each run of the tests. */
async function once<T>(compute: () => Promise<T>): Promise<T> {
  const { project, line } = test.info()
  const file = join(project.outputDir, `same-bits-${line}.json`)
  if (existsSync(file)) return JSON.parse(readFileSync(file, 'utf8')) as T
  const value = await compute()
  mkdirSync(project.outputDir, { recursive: true })
  writeFileSync(file, JSON.stringify(value))
  return value
}

/** The command line's answers. */
async function runInNode(cases: Case[]): Promise<Outcome[]> {
  const outcomes: Outcome[] = []
  for (const { scenario, strategies } of cases) {
    const wanted = strategies.length === 1 ? strategies[0]! : 'all'
    const args = ['.tools/jawbench.mjs', scenario.job, '-', '--strategy', wanted, '--format', 'json']
    const node = spawn(process.execPath, args, { stdio: ['pipe', 'pipe', 'inherit'] })
    node.stdin.end(JSON.stringify(scenario))
    const { results } = JSON.parse(await text(node.stdout)) as { results: Outcome[] }
    outcomes.push(...results.map(part))
  }
  return outcomes
}

/** The answers of the very worker that the page starts, asked by the page's own messages. */
async function runInPage(page: Page, cases: Case[]): Promise<Outcome[]> {
  const jobs = cases.flatMap(({ scenario, strategies }) =>
    strategies.map((strategy) => ({ scenario, strategy, traces: true })),
  )
  const answers = await page.evaluate(async (inputs: GripJob[]) => {
    const filesOfBuild = await (await fetch('sw.js')).text()
    const worker = new Worker(/assets\/simulator\.worker-[\w-]+\.js/.exec(filesOfBuild)![0], { type: 'module' })
    const results: GripResult[] = []
    for (const [job, input] of inputs.entries()) {
      results.push(
        await new Promise<GripResult>((resolve, reject) => {
          worker.onerror = ({ message }) => reject(new Error(message))
          worker.onmessage = ({ data }: MessageEvent<Answer>) => {
            if (data.kind === 'done') resolve(data.result)
            if (data.kind === 'failed') reject(new Error(data.message))
          }
          worker.postMessage({ kind: 'grip', job, input, newest: null } satisfies Request)
        }),
      )
    }
    worker.terminate()
    return JSON.stringify(results)
  }, jobs)
  return (JSON.parse(answers) as GripResult[]).map(part)
}

const part = ({ hash, verdict, metrics, events }: Outcome): Outcome => ({
  hash,
  verdict,
  metrics,
  events,
})
