/** The registry of commands: a new one is one file and one line here. */
import type { Command } from './command.ts'
import { grip } from './grip.ts'
import { loops } from './loops.ts'
import { model } from './model.ts'
import { presets } from './presets.ts'
import { rescue } from './rescue.ts'
import { schema } from './schema.ts'
import { gather, spread } from './spread.ts'
import { tune } from './tune.ts'
import { why } from './why.ts'

export const COMMANDS: Command[] = [grip, loops, why, rescue, tune, spread, gather, model, presets, schema]

/** Where the text on what a command does begins. */
const COLUMN = 26

export const usage = () =>
  [...COMMANDS.map(usageOf), 'FILE is a scenario file, the id of a preset, or - for standard input.'].join('\n')

function usageOf({ id, takes, does }: Command): string {
  const call = `jawbench ${id} ${takes}`.trim()
  return call.length < COLUMN ? call.padEnd(COLUMN) + does : `${call}\n${' '.repeat(COLUMN)}${does}`
}
