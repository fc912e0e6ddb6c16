// node .tools/guard.mjs SCRIPT ARGUMENTS: runs a script so that nothing of it is left behind, however it is ended. The script and all
// that it starts belong to a watcher of their own, which ends them when this process asks it to or is gone, killed outright included.
import { spawn } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const [script = '', ...args] = process.argv.slice(2)
const watcher = spawn(process.execPath, [join(here, 'watch.mjs'), join(here, script), ...args], {
  stdio: ['pipe', 'inherit', 'inherit'],
  detached: true, // out of reach of a signal to this process's group
})
watcher.on('exit', (code) => process.exit(code ?? 1))
// The pipe is what the watcher listens to: closed by us, or by the system when we are gone.
const end = () => watcher.stdin.destroy()
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, end)
const parent = process.ppid
setInterval(() => process.ppid !== parent && end(), 500).unref()
