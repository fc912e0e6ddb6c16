/** The registry of commands: a new one is one file and one line here. A job has its own by being one. */
import { JOBS } from '../job/index.ts'
import { axes } from './axes.ts'
import type { Command } from './command.ts'
import { fit } from './fit.ts'
import { jobCommand } from './job.ts'
import { log } from './log.ts'
import { loops } from './loops.ts'
import { map } from './map.ts'
import { model } from './model.ts'
import { presets } from './presets.ts'
import { rare } from './rare.ts'
import { rescue } from './rescue.ts'
import { schema } from './schema.ts'
import { gather, spread } from './spread.ts'
import { tune } from './tune.ts'
import { why } from './why.ts'

const COMMANDS: Command[] = [
  loops,
  why,
  rescue,
  tune,
  axes,
  spread,
  gather,
  rare,
  map,
  fit,
  log,
  model,
  presets,
  schema,
]

/** First what carries a job out, then what is asked of it. */
export const commands = (): Command[] => [...Object.values(JOBS).map(jobCommand), ...COMMANDS]

/** Where the text on what a command does begins. */
const COLUMN = 26

export const usage = () =>
  [...commands().map(usageOf), 'FILE is a scenario file, the id of a preset, or - for standard input.'].join('\n')

function usageOf({ id, takes, does }: Command): string {
  const call = `jawbench ${id} ${takes}`.trim()
  return call.length < COLUMN ? call.padEnd(COLUMN) + does : `${call}\n${' '.repeat(COLUMN)}${does}`
}
