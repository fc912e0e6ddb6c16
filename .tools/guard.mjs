// node .tools/guard.mjs SCRIPT ARGUMENTS: runs a script so that nothing of it is left behind, however it is ended. The script and all
// that it starts belong to a watcher of their own, which ends them when this process asks it to or is gone, killed outright included.
import { spawn } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parentOf } from './processes.mjs'

/** How often it is looked whether those who started this are still there [ms]. */
const REST = 500

const here = dirname(fileURLToPath(import.meta.url))
const [script = '', ...args] = process.argv.slice(2)
const watcher = spawn(process.execPath, [join(here, 'watch.mjs'), join(here, script), ...args], {
  stdio: ['pipe', 'inherit', 'inherit'],
  detached: true, // out of reach of a signal to this process's group
})
/** @type {NodeJS.Signals | null} */
let asked = null

watcher.on('exit', (code) => {
  if (!asked) process.exit(code ?? 1)
  // Whoever started this sees how it ended.
  process.removeAllListeners(asked)
  process.kill(process.pid, asked)
})
// The pipe is what the watcher listens to: closed by us, or by the system when we are gone.
const end = () => watcher.stdin.destroy()
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
  process.on(signal, () => {
    asked ??= signal
    end()
  })

// npm starts a script through a shell, which stays when npm is killed outright; then it is the shell's parent that is gone.
const above = () => (process.env.npm_lifecycle_event ? parentOf(process.ppid) : null)
const [parent, grandparent] = [process.ppid, above()]
setInterval(() => (process.ppid !== parent || above() !== grandparent) && end(), REST).unref()
