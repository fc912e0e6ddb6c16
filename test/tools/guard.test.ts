import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { expect, it } from 'vitest'
import { isRunning } from '../../.tools/processes.mjs'

/** Starts one process of its own group, as a browser is, which starts another; both say their ids and would run for hours. */
const FAMILY = `
  import { spawn } from 'node:child_process'
  const stay = 'console.log(process.pid); setInterval(() => {}, 1e6)'
  const parent = "require('node:child_process').spawn(process.execPath, ['-e', " + JSON.stringify(stay) + "], { stdio: 'inherit' });" + stay
  spawn(process.execPath, ['-e', parent], { stdio: 'inherit', detached: true })
  console.log(process.pid)
  setInterval(() => {}, 1e6)`

/** What npm does: it runs a script through a shell. */
const SHELL = `
  import { spawnSync } from 'node:child_process'
  console.log(process.pid)
  spawnSync('sh', ['-c', '"$@"; true', 'sh', process.execPath, ...process.argv.slice(2)], { stdio: 'inherit' })`

function written(text: string) {
  const file = join(mkdtempSync(join(tmpdir(), 'jawbench-guard-')), 'script.mjs')
  writeFileSync(file, text)
  return file
}

const guarded = (text: string) => ['.tools/guard.mjs', relative('.tools', written(text))]

/** So many ids that a process and what it has started say. */
async function idsOf(process: ChildProcess, count: number): Promise<number[]> {
  let said = ''
  while (said.split('\n').length <= count) said += String((await once(process.stdout!, 'data'))[0])
  return said.trim().split('\n').map(Number)
}

const childrenOf = (pid: number | undefined) =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ').map(Number)

const LINUX = process.platform === 'linux'

it.runIf(LINUX).each(['SIGTERM', 'SIGINT', 'SIGHUP', 'SIGKILL'] as const)(
  'leaves nothing running when it is ended by %s, by which it ends itself',
  async (signal) => {
    const guard = spawn(process.execPath, guarded(FAMILY), { stdio: ['ignore', 'pipe', 'inherit'] })
    const ended = once(guard, 'exit')
    const ids = [...(await idsOf(guard, 3)), ...childrenOf(guard.pid)]
    expect(ids).toHaveLength(4)
    expect(ids.every(isRunning)).toBe(true)
    guard.kill(signal)
    await expectGone(ids)
    expect(await ended).toEqual([null, signal])
  },
)

it.runIf(LINUX)(
  'leaves nothing running when npm is killed outright, which has started it through a shell',
  async () => {
    const npm = spawn(process.execPath, [written(SHELL), ...guarded(FAMILY)], {
      stdio: ['ignore', 'pipe', 'inherit'],
      env: { ...process.env, npm_lifecycle_event: 'test' },
    })
    const ids = await idsOf(npm, 4)
    npm.kill('SIGKILL')
    await expectGone(ids)
  },
)

it.runIf(LINUX)('leaves nothing running when its script is killed, and says that it went wrong', async () => {
  const guard = spawn(process.execPath, guarded(FAMILY), { stdio: ['ignore', 'pipe', 'inherit'] })
  const ended = once(guard, 'exit')
  const ids = await idsOf(guard, 3)
  const [watcher] = childrenOf(guard.pid)
  const [script] = childrenOf(watcher)
  process.kill(script!, 'SIGKILL')
  await expectGone(ids)
  expect(await ended).toEqual([1, null])
})

const expectGone = (ids: number[]) => expect.poll(() => ids.filter(isLiving), { timeout: 600_000 }).toEqual([])

/** A process that has ended but that nobody has asked about yet still has its id. */
const isLiving = (pid: number) => isRunning(pid) && !readStat(pid).includes(') Z ')

function readStat(pid: number) {
  try {
    return readFileSync(`/proc/${pid}/stat`, 'utf8')
  } catch {
    return ') Z '
  }
}

it('passes on exit code and arguments', () => {
  const [guard = '', script = ''] = guarded(`console.log(process.argv.slice(2).join()); process.exitCode = 7`)
  const { status, stdout } = spawnSync(process.execPath, [guard, script, 'a', 'b'], { encoding: 'utf8' })
  expect(status).toBe(7)
  expect(stdout).toBe('a,b\n')
})
