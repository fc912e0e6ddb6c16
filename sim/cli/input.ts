/** Reading a scenario: a file, a preset or standard input, and the edits of `--set`. */
import { closeSync, openSync, readSync } from 'node:fs'
import { ALL_PRESETS, editScenario, faultLine, LONGEST_FILE, parseScenario, type Scenario } from '../scenario/index.ts'
import { isJson, optionsOf, Refused, SCENARIO_OPTIONS, strategyNamed } from './command.ts'
import { reasonOf } from './system.ts'

/**
 * `file` is a path, the id of a preset, or `-`; `sets` are texts such as `servo.kp=3200`; `job` is the only one that is taken, null:
 * any. Throws a Refused with every fault.
 */
export function readScenario(file: string | undefined, sets: string[], job: string | null = 'grip'): Scenario {
  if (file === undefined) throw new Refused(['no scenario file was named'], true)
  const checked = parseScenario(textOf(file))
  if (!checked.ok) throw new Refused(checked.faults.map(faultLine))
  if (job !== null && checked.scenario.job !== job)
    throw new Refused([`job: given "${checked.scenario.job}", allowed "${job}"`])
  if (sets.length === 0) return checked.scenario
  const edited = editScenario(checked.scenario, sets.map(assignment))
  if (!edited.ok) throw new Refused(edited.faults.map(faultLine))
  return edited.scenario
}

/** Scenario, strategy and format of a question about one strategy, of one job or of any. */
export function questionOf(args: string[], job?: string | null) {
  const known = { ...SCENARIO_OPTIONS, strategy: { type: 'string', default: '' } } as const
  const { values, positionals } = optionsOf(args, known, 1)
  const strategy = strategyNamed(values.strategy)
  const json = isJson(values.format)
  return { scenario: readScenario(positionals[0], values.set, job), strategy, json }
}

function assignment(text: string): { path: string; value: unknown } {
  const at = text.indexOf('=')
  if (at < 1) throw new Refused([`--set: given "${text}", allowed PATH=VALUE such as servo.kp=3200`])
  const value = text.slice(at + 1)
  try {
    return { path: text.slice(0, at), value: JSON.parse(value) }
  } catch {
    return { path: text.slice(0, at), value }
  }
}

function textOf(file: string): string {
  const preset = ALL_PRESETS.find((candidate) => candidate.id === file)
  if (preset) return JSON.stringify(preset.scenario)
  const from = file === '-' ? 0 : opened(file)
  try {
    return contentOf(from, file)
  } finally {
    if (from !== 0) closeSync(from)
  }
}

function opened(file: string): number {
  try {
    return openSync(file, 'r')
  } catch (error) {
    throw new Refused([`${file}: ${reasonOf(error)}`])
  }
}

/** Reads to the end, or until it is longer than a scenario may be: the file may be a pipe or a device without an end. */
function contentOf(from: number, name: string): string {
  const bytes = new Uint8Array(LONGEST_FILE + 1)
  let length = 0
  for (;;) {
    const read = readSome(from, bytes.subarray(length), name)
    if (read === 0) return new TextDecoder().decode(bytes.subarray(0, length))
    length += read
    if (length > LONGEST_FILE)
      throw new Refused([`${name}: given more than ${LONGEST_FILE} bytes, allowed at most that`])
  }
}

/** A terminal or pipe that has nothing yet is asked again a little later. */
function readSome(from: number, into: Uint8Array, name: string): number {
  for (;;) {
    try {
      return readSync(from, into)
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw new Refused([`${name}: ${reasonOf(error)}`])
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE)
    }
  }
}

/** [ms] */
const PAUSE = 20
