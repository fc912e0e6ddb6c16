/** What a fit to a log says of itself. */
import { jobOf } from '../job/index.ts'
import type { Astray } from '../log/astray.ts'
import type { Alignment, FitFault, FittedValue, ResidualOf, Untold } from '../log/facts.ts'
import type { AnswerChannel } from '../log/measured.ts'
import { unitsOf } from '../log/measured.ts'
import type { Taken } from '../log/recorded.ts'
import { DELAY } from '../log/replayed.ts'
import type { ResponseFit } from '../log/response/fit.ts'
import { type JobId, quantityAt, type Scenario } from '../scenario/index.ts'
import { studyWords } from './jobs.ts'
import { percent } from './spread.ts'
import { decibels, degrees, figure, type Wording } from './wording.ts'

type Axis = Pick<Scenario, 'actuator'>

const CHANNELS: Record<Exclude<AnswerChannel, 'force'>, string> = {
  motorTravel: 'position',
  travel: 'position of the output',
  speed: 'speed',
  command: 'command',
  current: 'current',
  voltage: 'voltage',
}

/** What a channel is called; the force by the job's own word for its effort. */
export const fitChannel = (job: JobId, channel: AnswerChannel): string =>
  channel === 'force' ? studyWords(job).effort : CHANNELS[channel]

/** What a free key is called. */
export const freeName = (scenario: Axis, path: string): string =>
  path === DELAY ? 'Delay of the log' : (quantityAt(scenario, path)?.title ?? path)

/** Of the delay of a log, which is no quantity of a scenario. */
const SECONDS = { unit: 's', shown: 'ms' }

const named = (scenario: Axis, paths: readonly string[]) => {
  const names = [...new Set(paths.map((path) => freeName(scenario, path).toLowerCase()))]
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

const first = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The move that would tell more of a quantity, by what its key ends in. */
const MOVES: [RegExp, string][] = [
  [/[mM]ass$|inertia$/, 'a move with more acceleration tells more of it'],
  [/viscous/, 'moves at two speeds or more, both ways, tell more of it'],
  [/oulomb/, 'two slow moves, one each way, tell more of it'],
  [/breakaway$/, 'several starts from rest, each under a current that grows slowly, tell more of it'],
  [/bristleStiffness$/, 'reversals of a few micrometres tell more of it'],
  [/currentOffset$/, 'the same slow move both ways tells more of it'],
  [/backlash$/, 'reversals with the position of the output logged beside that of the motor tell more of it'],
  [/(force|torque)Constant$/, 'log the motor voltage at speed, or a force gauge'],
  [/part\.width$|part\.stiffness$/, 'a slow touch with the force logged tells more of it'],
  [
    /ram\.gap$|interference$|shoulder\.depth$|ram\.stiffness$/,
    'a slow way in, onto the shoulder where there is one, with the force logged tells more of it',
  ],
  [
    /startAngle$|runDown$|engagement$|liner\.stiffness$/,
    'a slow turn onto the liner with the torque logged tells more of it',
  ],
  [/relaxing$|relaxationTime$/, 'holding the torque for longer tells more of it'],
  [/web\.modulus$|web\.slack$/, 'drawing the web taut at standstill with the tension logged tells more of it'],
  [/exponent$/, 'pressing from the lightest to the highest force tells more of it'],
  [/part\.damping$/, 'a faster touch tells more of it'],
  [/relaxation/, 'holding the part for longer tells more of it'],
  [/delay$/, 'a move with more acceleration tells more of it'],
]

const moveFor = (path: string) => MOVES.find(([ends]) => ends.test(path))?.[1] ?? 'another move is needed'

/** One sentence on what a log does not tell, and which move would. */
export function untoldText(scenario: Axis, untold: Untold, words: Wording): string {
  const [path = ''] = untold.paths
  switch (untold.kind) {
    case 'nothing':
      return `${first(named(scenario, untold.paths))}: nothing in this log changes with it; ${moveFor(path)}.`
    case 'hardly':
      return `${first(named(scenario, untold.paths))} is hardly told by this log, its limits lie more than half of it away; ${moveFor(path)}.`
    case 'end':
      return `${first(named(scenario, untold.paths))} ended at an end of its range, ${words.of(quantityAt(scenario, path) ?? SECONDS, untold.bound)}: the log asks for less or more than may be, or does not tell it.`
    case 'together':
      return `${first(named(scenario, untold.paths))} cannot be told apart well in this log (their errors correlate by ${figure(untold.correlation)}): where one is wrong, so is the other; ${moveFor(path)}.`
    case 'ratio':
      return `${first(named(scenario, untold.paths))} ${untold.paths.length > 1 ? 'are' : 'is'} known only as the ratio to the ${freeName(scenario, untold.constant).toLowerCase()}, which this log does not tell; log the motor voltage or a force, or weigh what moves.`
  }
}

/** Why there is no fit, one sentence. */
export function fitFaultText(job: JobId, fault: FitFault): string {
  switch (fault.kind) {
    case 'still':
      return 'nothing moves in it; record a move both ways at two speeds, with position and current'
    case 'ways':
      return `its column “${fault.header}” is a length, and the output of this axis turns; give positions as angles, in rad, ° or rev`
    case 'angles':
      return `its column “${fault.header}” is an angle, and the output of this axis goes straight; give the way for a turn as its scale`
    case 'nothing-drives':
      return 'it has neither a position reference, nor a current with a position, that could drive the model'
    case 'nothing-compares':
      return 'it has no current, command, voltage or force that the model could be held against while the axis moves'
    case 'no-quantity':
      return `${fault.path}: no quantity of this axis`
    case 'nothing-free':
      return 'its moves are too plain to tell anything of the axis; record a move both ways at two speeds'
    case 'another-axis':
      return `the fit does not describe this axis: ${percent(Math.min(1, fault.share))} of the ${fitChannel(job, fault.channel)} stays unexplained${fault.share > 1 ? ' and more' : ''}; gains, force constant, or signs and scales of the columns are those of another one, or the output met something that no column tells of`
    case 'few-frequencies':
      return `${fault.used === 0 ? 'none' : `only ${fault.used}`} of its frequencies can be used${fault.leftOut > 0 ? `, ${fault.leftOut} are left out, whose coherence may be that of unrelated signals` : ''}; more than ${fault.free} are needed, as so many quantities are free`
    case 'another-response':
      return 'the fit does not describe this axis: most of the response stays unexplained; what drives it and what it shows, units and scale of the magnitude, or the force constant are those of another one'
    case 'short-response':
      return `${fault.rows} rows are too few for a frequency response, which takes at least ${fault.least}`
    case 'no-response':
      return `it has no current or command beside the ${fault.shown}, of which a frequency response could be computed`
  }
}

export const takenText = ({ header, unit, scale }: Taken) =>
  `the command ${header === '' ? '' : `“${header}” `}is ${unit === '' ? 'without a unit' : `in ${unit}`} and was taken for a current, ${figure(scale)} A for each`

/** Units in which what is left of a channel is read. */
const SHOWN: Record<string, string> = { m: 'mm', 'm/s': 'mm/s', rad: 'rev', 'rad/s': 'rev/min' }

/** "position: 0.00129 mm left, 0.0012 % of what was measured" */
export function residualText(
  scenario: Pick<Scenario, 'job'>,
  { channel, rms, relative }: ResidualOf,
  words: Wording,
): string {
  const unit = unitsOf(jobOf(scenario).output)[channel]
  const left = words.of({ unit, ...(SHOWN[unit] && { shown: SHOWN[unit] }) }, rms)
  return `${fitChannel(scenario.job, channel)}: ${left} left (rms)${relative === null ? '' : `, ${figure(100 * relative)} % of what was measured`}`
}

/** Where a log begins to tell, and which of its channels run late by more than `step`, that of its rows [s]; a sentence each. */
export function alignmentTexts(
  job: JobId,
  { motion, touch, astray, late }: Alignment,
  step: number,
  words: Wording,
): string[] {
  const known = late.filter(({ delay }) => delay !== null && Math.abs(delay) > step)
  const lags = known.map(({ channel, delay }) => {
    const size = words.shortTime(Math.abs(delay!))
    return `${fitChannel(job, channel)} ${delay! < 0 ? `${size} before` : `${size} after`}`
  })
  return [
    motion === null ? 'Nothing in it begins to move.' : `It begins to move ${words.time(motion)} after its first row.`,
    ...(touch === null
      ? []
      : [`${first(studyWords(job).effort)} begins to rise ${words.time(touch)} after its first row.`]),
    ...(lags.length > 0
      ? [`By correlation it shows ${lags.join(', ')} the model.`]
      : late.some(({ delay }) => delay !== null)
        ? ['By correlation no channel runs before or after the model by more than a row.']
        : []),
    ...astray.map((each) => astrayText(each, words)),
  ]
}

/** "From 1.2 s to 1.9 s the axis stood blocked …" */
export const astrayText = ({ kind, from, to }: Astray, words: Wording) =>
  `From ${words.time(from)} to ${words.time(to)} the axis ${kind === 'blocked' ? 'stood far from its reference, as if blocked' : 'ran away from its reference'}: these rows do not count.`

/** An interval as a person reads it: both ends, or which of them the log does not tell. */
export function intervalText(
  { low, high }: { low: number | null; high: number | null },
  write: (value: number) => string,
) {
  if (low === null && high === null) return 'not told'
  if (low === null) return `up to ${write(high!)}`
  return high === null ? `from ${write(low)}` : `${write(low)} to ${write(high)}`
}

/** A logarithm of a ratio in the units of a response: 0.1 is 0.87 dB and 5.7°. */
const responseLeft = (left: number) => `${decibels((20 * left) / Math.LN10)} or ${degrees((180 * left) / Math.PI)}`

/** How well a frequency response is met, and where the fitted axis swings. */
export function responseText(
  { before, after, used, leftOut, resonance }: Pick<ResponseFit, 'before' | 'after' | 'used' | 'leftOut' | 'resonance'>,
  words: Wording,
): string {
  const left = leftOut > 0 ? `; ${leftOut} left out, whose coherence may be that of unrelated signals` : ''
  const swing =
    resonance === null ? '' : ` Motor side and output swing against each other at ${words.swing(resonance)}.`
  return `${used} frequencies, ${responseLeft(after)} left (rms), before ${responseLeft(before)}${left}.${swing}`
}

/** What a scenario keeps of the logs that it was fitted to, of so many seconds each, and the report shows with its notes. */
export function fitNote(
  scenario: Axis,
  values: readonly FittedValue[],
  seconds: readonly number[],
  words: Wording,
): string {
  return `Fitted to ${logsText(seconds, words)}, with 95 % intervals: ${valuesText(scenario, values, words)}.`
}

/** "a log of 3 s", "2 logs of 5 s together" */
export function logsText(seconds: readonly number[], words: Wording): string {
  const total = words.time(seconds.reduce((sum, each) => sum + each, 0))
  return seconds.length === 1 ? `a log of ${total}` : `${seconds.length} logs of ${total} together`
}

/** The same of a frequency response. */
export const responseNote = (scenario: Axis, { values, used }: Pick<ResponseFit, 'values' | 'used'>, words: Wording) =>
  `Fitted to ${responseName(used)}, with 95 % intervals: ${valuesText(scenario, values, words)}.`

export const responseName = (used: number) => `a frequency response of ${used} frequencies`

function valuesText(scenario: Axis, values: readonly FittedValue[], words: Wording): string {
  const found = values.flatMap(({ path, value, low, high }) => {
    const schema = quantityAt(scenario, path)
    if (!schema) return []
    const range = low === null || high === null ? 'not told' : `${words.of(schema, low)} to ${words.of(schema, high)}`
    return [`${freeName(scenario, path).toLowerCase()} ${words.of(schema, value)} (${range})`]
  })
  return found.join(', ')
}

/** The scenario's notes with that of its fit, in the place of one of an earlier fit; '': without any. */
export function notesWith(notes: string, note: string): string {
  const kept = notes
    .split('\n')
    .filter((line) => !/^Fitted to (a log|\d+ logs|a frequency response) of /.test(line))
    .join('\n')
    .trimEnd()
  return kept === '' || note === '' ? kept + note : `${kept}\n${note}`
}
