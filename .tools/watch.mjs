// The other half of guard.mjs: runs a script, and ends all that it has started when standard input closes or the script is over.
import { spawn } from 'node:child_process'
import { endAllOf, MARK } from './processes.mjs'

const child = spawn(process.execPath, process.argv.slice(2), {
  stdio: ['ignore', 'inherit', 'inherit'],
  env: { ...process.env, [MARK]: String(process.pid) },
})
let ending = false

child.on('exit', async (code) => {
  if (ending) return
  ending = true
  await endAllOf(process.pid) // a script that breaks down leaves what it had started
  process.exit(code ?? 1)
})
process.stdin.resume().on('close', async () => {
  if (ending) return
  ending = true
  await endAllOf(process.pid)
  process.exit(130)
})
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
  process.on(signal, () => process.stdin.destroy())
