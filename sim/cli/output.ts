/** Writing: the answer to standard output, and files. */
import { writeFileSync } from 'node:fs'
import { Refused } from './command.ts'
import { reasonOf } from './system.ts'

export const print = (text: string) => process.stdout.write(`${text}\n`)

export const printJson = (value: unknown) => print(JSON.stringify(value, null, 2))

/** `option` is the option that named the file. What the file holds after a refusal is not whole. */
export function writeOut(option: string, file: string, text: string): void {
  try {
    writeFileSync(file, text)
  } catch (error) {
    throw new Refused([`${option}: ${file} cannot be written, ${reasonOf(error)}`])
  }
}

/**
 * A reader that has seen enough closes the pipe; that ends the command quietly, with the exit code that it would have had. An
 * answer that finds no room is a refusal.
 */
export function watchOutput(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') {
      process.stderr.write(`standard output cannot be written, ${reasonOf(error)}\n`)
      process.exitCode = 2
    }
  })
  process.stderr.on('error', () => {}) // there is nobody left to tell
}
