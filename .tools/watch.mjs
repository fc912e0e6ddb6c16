// The other half of guard.mjs: runs a script, and when standard input closes ends it with all that it has started.
import { spawn } from 'node:child_process'
import { endAllOf } from './processes.mjs'

const child = spawn(process.execPath, process.argv.slice(2), { stdio: ['ignore', 'inherit', 'inherit'] })
let ending = false

child.on('exit', (code) => {
  if (!ending) process.exit(code ?? 1)
})
process.stdin.resume().on('close', async () => {
  ending = true
  await endAllOf(process.pid)
  process.exit(130)
})
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
  process.on(signal, () => process.stdin.destroy())
