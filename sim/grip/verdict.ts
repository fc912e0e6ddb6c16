/** What became of the part, and why, in one sentence. */
import type { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'
import { tracesHash } from './hash.ts'
import type { GripEvents, GripResult, Metrics, Verdict } from './result.ts'
import type { Run } from './run.ts'

/** A part that slid less than this counts as held [m]; common practice, no source. */
export const SLIP_LIMIT = 1e-4

/** How a reason writes its quantities; the page hands in its own units. */
export interface Wording {
  force(newtons: number): string
  length(metres: number): string
  time(seconds: number): string
  temperature(celsius: number): string
}

const figure = (value: number) => Number(value.toPrecision(3)).toString().replace('-', '−')

export const SI_WORDING: Wording = {
  force: (newtons) => `${figure(newtons)} N`,
  length: (metres) => `${figure(metres * 1000)} mm`,
  time: (seconds) => `${seconds.toFixed(3)} s`,
  temperature: (celsius) => `${figure(celsius)} °C`,
}

/** The worst that happened decides: unstable, crushed, missed, dropped, slipped, marked, else held. */
export function verdictOf(scenario: Scenario, { events, metrics }: Pick<Run, 'events' | 'metrics'>): Verdict {
  if (events.unstable !== null) return 'unstable'
  if (events.crack !== null) return 'crushed'
  if (metrics.contactTime === null || events.lift === null) return 'missed'
  if (events.drop !== null) return 'dropped'
  if ((metrics.slipDistance ?? 0) > SLIP_LIMIT) return 'slipped'
  return (metrics.peakForce ?? 0) > markLimit(scenario) ? 'marked' : 'held'
}

/** Force above which the part carries a mark or a dent [N]. */
export const markLimit = ({ part }: Scenario) => Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)

/** Whether nothing that still comes can make the verdict `held`; `mark` is the part's mark limit [N]. */
export const isLost = (plant: Plant, mark: number) =>
  plant.out || plant.slip.distance > SLIP_LIMIT || plant.peak > mark || !Number.isNaN(plant.crackTime)

const CAUSES: Record<Run['cause'], string> = {
  '': '',
  numbers: 'the numbers are no longer finite',
  travel: 'the jaw has left its travel',
  'position loop': 'the position loop bangs from limit to limit',
  'current loop': 'the current loop bangs between the rails of its voltage',
}

export interface ReasonInput {
  verdict: Verdict
  metrics: Metrics
  events: GripEvents
  cause?: Run['cause']
}

/** One sentence: a number, a limit, a time; a second one where the winding gets too hot. */
export function reasonOf(scenario: Scenario, input: ReasonInput, words = SI_WORDING): string {
  const { windingTemperature } = input.metrics
  const { limit } = scenario.actuator.motor.thermal
  const hot = windingTemperature !== null && windingTemperature > limit
  const warning = hot
    ? ` The winding reaches ${words.temperature(windingTemperature)}, its limit is ${words.temperature(limit)}.`
    : ''
  return outcome(scenario, input, words) + warning
}

function outcome(scenario: Scenario, { verdict, metrics, events, cause = '' }: ReasonInput, words: Wording): string {
  const { part, jaws } = scenario
  const peak = metrics.peakForce ?? 0
  const at = (time: number | null) => words.time(time ?? 0)
  switch (verdict) {
    case 'unstable':
      return `Leaves its rails at ${at(events.unstable)}${cause ? `: ${CAUSES[cause]}` : ''}.`
    case 'missed':
      return metrics.contactTime === null
        ? `Never touches the part within ${words.time(scenario.run.duration)}.`
        : 'No force on the part when its support goes: it stays behind.'
    case 'crushed':
      return `Cracks at ${at(events.crack)}: ${words.force(peak)} on a ${words.force(part.crackForce ?? 0)} part.`
    case 'dropped':
      return `Lost at ${at(events.drop)}: slides past the ${words.length(jaws.padLength)} pad${shortfall(metrics, words)}.`
    case 'slipped':
      return `Slides ${words.length(metrics.slipDistance ?? 0)} from ${at(events.slip)} on${shortfall(metrics, words)}.`
    case 'marked': {
      const dented = part.yieldForce !== undefined && peak > part.yieldForce
      const limit = markLimit(scenario)
      return `${dented ? 'Dented' : 'Marked'} at ${at(metrics.peakForceTime)}: ${words.force(peak)} on a ${words.force(limit)} limit.`
    }
    case 'held':
      return holding(metrics, words)
  }
}

function shortfall({ settledForce, requiredForce }: Metrics, words: Wording): string {
  if (requiredForce === null || settledForce === null) return ''
  return settledForce < requiredForce
    ? `, with ${words.force(settledForce)} where ${words.force(requiredForce)} hold`
    : `, although ${words.force(settledForce)} should hold ${words.force(requiredForce)}`
}

function holding({ settledForce, requiredForce, holdMargin, damageMargin }: Metrics, words: Wording): string {
  const percent = (share: number) => `${figure(share * 100)} %`
  const grip = settledForce === null ? 'Holds' : `Holds with ${words.force(settledForce)}`
  const need = requiredForce === null ? '' : ` where ${words.force(requiredForce)} are needed`
  const spare = [
    holdMargin === null ? '' : `${percent(holdMargin)} to spare before it slides`,
    damageMargin === null ? '' : `${percent(damageMargin)} before damage`,
  ].filter((text) => text !== '')
  return `${grip}${need}${spare.length > 0 ? `; ${spare.join(', ')}` : ''}.`
}

export function judge(scenario: Scenario, strategy: GripResult['strategy'], step: number, run: Run): GripResult {
  const { metrics, events, cause } = run
  const verdict = verdictOf(scenario, run)
  const reason = reasonOf(scenario, { verdict, metrics, events, cause })
  return { strategy, verdict, reason, stepError: null, metrics, events, hash: tracesHash(run.traces), cause, step }
}
