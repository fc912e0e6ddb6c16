/** Ratings that a run exceeds, and for how long it may: one sentence each. */
import type { RunResult } from '../job/job.ts'
import type { Overload, Rating } from '../job/ratings.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Wording } from './wording.ts'

type Loaded = Pick<RunResult, 'metrics' | 'overloads'>

type Say = (overload: Overload, words: Wording, scenario: Scenario, run: Loaded) => string

const SAY: Record<Rating, Say> = {
  continuousCurrent: ({ value, limit, over }, words, scenario, run) => {
    const { cycle } = scenario.run
    const asked =
      cycle === null
        ? `Settles at ${words.current(value)}`
        : `Takes ${words.current(value)} rms over the cycle of ${words.time(cycle)}`
    return `${asked}, ${words.ratio(over / limit)} more than the ${words.current(limit)} that the motor carries for ever${lasting(scenario, run, words)}.`
  },
  peakCurrent: ({ value, limit, over }, words) =>
    `The current peaks at ${words.current(value)}, ${words.ratio(over / limit)} above the ${words.current(limit)} of motor and amplifier.`,
  windingTemperature: ({ value, limit }, words) =>
    `The winding reaches ${words.temperature(value)}, its limit is ${words.temperature(limit)}.`,
  busPower: ({ value, limit, over }, words) =>
    `The bus has to give ${words.power(value)}, ${words.ratio(over / limit)} above its ${words.power(limit)}.`,
}

/** One sentence a rating that is exceeded, none where nothing is. */
export const overloadSentences = (scenario: Scenario, run: Loaded, words: Wording): string[] =>
  run.overloads.map((overload) => SAY[overload.rating](overload, words, scenario, run))

/** How long the settled current may be held, as the end of a sentence; '' where nothing settled. */
function lasting({ actuator }: Scenario, { metrics, overloads }: Loaded, words: Wording): string {
  const { holdTime, settledCurrent } = metrics
  if (typeof settledCurrent !== 'number' || overloads.some(({ rating }) => rating === 'windingTemperature')) return ''
  const limit = words.temperature(actuator.motor.thermal.limit)
  if (typeof holdTime !== 'number') return `, although by the heat data the winding stays below ${limit}`
  return `; held on, the winding reaches ${limit} in ${words.time(holdTime)}`
}
