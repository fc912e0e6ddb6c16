/**
 * The command line. Exit 0: ran, whatever the verdict; 2: refused, each fault on stderr, be it in the input or in the place to write
 * to; 3: the simulation left the range of finite numbers.
 */
import { Refused } from './command.ts'
import { commands, usage } from './commands.ts'
import { core } from './core.ts'
import { serves } from './crew.ts'
import { print, watchOutput } from './output.ts'

async function main([name, ...args]: string[]): Promise<number> {
  if (name === undefined || name === 'help' || name === '--help') {
    print(usage())
    return 0
  }
  const command = commands().find(({ id }) => id === name)
  if (!command)
    throw new Refused(
      [
        `given "${name}", allowed ${commands()
          .map(({ id }) => id)
          .join(', ')}`,
      ],
      true,
    )
  return command.run(args, core)
}

async function begin(): Promise<void> {
  watchOutput()
  try {
    process.exitCode = await main(process.argv.slice(2))
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    process.stderr.write(`${[...error.lines, ...(error.usage ? [usage()] : [])].join('\n')}\n`)
    process.exitCode = 2
  }
}

if (!serves(import.meta.url)) await begin()
