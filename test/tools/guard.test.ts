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

function guarded(text: string) {
  const file = join(mkdtempSync(join(tmpdir(), 'jawbench-guard-')), 'script.mjs')
  writeFileSync(file, text)
  return ['.tools/guard.mjs', relative('.tools', file)]
}

/** The ids that the family says, and the watcher's. */
async function family(guard: ChildProcess): Promise<number[]> {
  let said = ''
  while (said.split('\n').length < 4) said += String((await once(guard.stdout!, 'data'))[0])
  const ids = said.trim().split('\n').map(Number)
  const watchers = readFileSync(`/proc/${guard.pid}/task/${guard.pid}/children`, 'utf8').trim().split(' ').map(Number)
  return [...ids, ...watchers]
}

it.runIf(process.platform === 'linux').each(['SIGTERM', 'SIGINT', 'SIGKILL'] as const)(
  'leaves nothing running when it is ended by %s',
  async (signal) => {
    const guard = spawn(process.execPath, guarded(FAMILY), { stdio: ['ignore', 'pipe', 'inherit'] })
    const ids = await family(guard)
    expect(ids).toHaveLength(4)
    expect(ids.every(isRunning)).toBe(true)
    guard.kill(signal)
    await expect.poll(() => ids.filter(isLiving), { timeout: 600_000 }).toEqual([])
  },
)

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
