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

/** Environment variable that holds the id of the process on whose behalf another was started, however far down the line. */
export const MARK = 'JAWBENCH_WATCHER'

/**
 * Ends all that a process has started, and what that has started, and so on: asks first, and kills what does not end. On Linux also
 * what was started on its behalf by a process that is gone, and so has no parent any more that tells; it carries the mark.
 */
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
  const found = new Set([pid, ...all.map(([id]) => id).filter((id) => id !== process.pid && isMarked(id, pid))])
  for (let before = 0; before < found.size; ) {
    before = found.size
    for (const [child, parent] of all) if (found.has(parent)) found.add(child)
  }
  found.delete(pid)
  return [...found]
}

function isMarked(/** @type {number} */ pid, /** @type {number} */ watcher) {
  try {
    return readFileSync(`/proc/${pid}/environ`, 'utf8').split('\0').includes(`${MARK}=${watcher}`)
  } catch {
    return false // not ours to read, gone meanwhile, or a system without this list
  }
}

/** @returns {[pid: number, parent: number][]} */
function listed() {
  if (existsSync('/proc/self/stat'))
    return readdirSync('/proc').flatMap((name) => {
      const parent = /^\d+$/.test(name) ? parentOf(Number(name)) : null
      return parent === null ? [] : [[Number(name), parent]]
    })
  const { stdout } =
    process.platform === 'win32'
      ? spawnSync('powershell', ['-c', 'gcim Win32_Process | % { "$($_.ProcessId) $($_.ParentProcessId)" }'])
      : spawnSync('ps', ['-A', '-o', 'pid=,ppid='])
  return Array.from(String(stdout).matchAll(/(\d+)\s+(\d+)/g), ([, pid, parent]) => [Number(pid), Number(parent)])
}

/**
 * The id of a process's parent on Linux; null elsewhere, and for a process that has ended or waits to be forgotten.
 * @returns {number | null}
 */
export function parentOf(/** @type {number} */ pid) {
  try {
    const [state, parent] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? []
    return state === 'Z' ? null : Number(parent)
  } catch {
    return null
  }
}
