/**
 * Calls of the command line in this process, which is warm: what a command answers does not depend on who runs it. That the program
 * begins, ends and deals with its streams as it should, is tested of the program itself.
 */
import { call } from '../../sim/cli/main.ts'

/** As a process would have ended. `args` are those of the program. */
export async function here(...args: string[]): Promise<{ status: number; stdout: string; stderr: string }> {
  const said = { stdout: '', stderr: '' }
  const streams = (['stdout', 'stderr'] as const).map((name) => {
    const { write } = process[name]
    process[name].write = (text: string | Uint8Array) => {
      said[name] += text
      return true
    }
    return () => {
      process[name].write = write
    }
  })
  try {
    return { status: await call(args), ...said }
  } finally {
    for (const restore of streams) restore()
  }
}
