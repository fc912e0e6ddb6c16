/** One call of the command line, whoever makes it. */
import '../others.ts'
import { Refused } from './command.ts'
import { commands, usage } from './commands.ts'
import { core } from './core.ts'
import { print } from './output.ts'

/**
 * Carries out a call by its arguments; each fault goes to stderr. The exit code: 0 ran, whatever the verdict; 2 refused, be it the input
 * or the place to write to; 3 the simulation left the range of finite numbers.
 */
export async function call(args: string[]): Promise<number> {
  try {
    return await carriedOut(args)
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    process.stderr.write(`${[...error.lines, ...(error.usage ? [usage()] : [])].join('\n')}\n`)
    return 2
  }
}

async function carriedOut([name, ...args]: string[]): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help') {
    print(usage())
    return 0
  }
  const command = commands().find(({ id }) => id === name)
  if (!command) {
    const known = commands().map(({ id }) => id)
    throw new Refused([`given "${name}", allowed ${known.join(', ')}`], true)
  }
  return command.run(args, core)
}
