// Processes as the system lists them.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'

/** How long processes may take to end by themselves before they are killed [ms]. */
const PATIENCE = 5000

export function isRunning(/** @type {number} */ pid) {
  try {
    return pid > 0 && process.kill(pid, 0)
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

/** Ends all that a process has started, and what that has started, and so on: asks first, and kills what does not end. */
export async function endAllOf(/** @type {number} */ pid) {
  const asked = startedBy(pid)
  for (const each of asked) signal(each, 'SIGTERM')
  for (const until = Date.now() + PATIENCE; asked.some(isRunning) && Date.now() < until; )
    await new Promise((rested) => setTimeout(rested, 50))
  for (const each of new Set([...asked, ...startedBy(pid)])) signal(each, 'SIGKILL')
}

function signal(/** @type {number} */ pid, /** @type {NodeJS.Signals} */ name) {
  try {
    process.kill(pid, name)
  } catch {
    // It has ended meanwhile.
  }
}

function startedBy(/** @type {number} */ pid) {
  const all = listed()
  const found = new Set([pid])
  for (let before = 0; before < found.size; ) {
    before = found.size
    for (const [child, parent] of all) if (found.has(parent)) found.add(child)
  }
  found.delete(pid)
  return [...found]
}

/** @returns {[pid: number, parent: number][]} */
function listed() {
  if (existsSync('/proc/self/stat'))
    return readdirSync('/proc').flatMap((name) => (/^\d+$/.test(name) ? parentOf(name) : []))
  const { stdout } =
    process.platform === 'win32'
      ? spawnSync('powershell', ['-c', 'gcim Win32_Process | % { "$($_.ProcessId) $($_.ParentProcessId)" }'])
      : spawnSync('ps', ['-A', '-o', 'pid=,ppid='])
  return Array.from(String(stdout).matchAll(/(\d+)\s+(\d+)/g), ([, pid, parent]) => [Number(pid), Number(parent)])
}

/** @returns {[pid: number, parent: number][]} nothing of a process that has ended meanwhile, or waits to be forgotten */
function parentOf(/** @type {string} */ pid) {
  try {
    const [state, parent] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? []
    return state === 'Z' ? [] : [[Number(pid), Number(parent)]]
  } catch {
    return []
  }
}
