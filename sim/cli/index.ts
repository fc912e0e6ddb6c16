/** The command line as a program; its exit codes are those of `call`. */
import '../others.ts'
import { serves } from './crew.ts'
import { call } from './main.ts'
import { watchOutput } from './output.ts'

async function begin(): Promise<void> {
  watchOutput()
  process.exitCode = await call(process.argv.slice(2))
}

if (!serves(import.meta.url)) await begin()
