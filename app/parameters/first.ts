/** What an optional key starts with when a person first sets it: credible, and accepted by the rules between keys. */
import {
  axisOf,
  capIn,
  gyrationOf,
  jobOf,
  padRadiusOf,
  pressIn,
  type QuantitySchema,
  type Scenario,
  webIn,
} from '../../sim/index.ts'

export function firstValue(scenario: Scenario, path: string, schema?: QuantitySchema): unknown {
  const { duration } = scenario.run
  if (path === 'arm.lift') return Math.min(round(duration * 0.6), ...scenario.arm.moves.map((move) => move.start))
  if (path === 'run.step') return Number((1 / scenario.drive.currentRate / 10).toPrecision(12))
  if (path === 'window.band') return nextPoint(scenario)
  const same = asLeftOut(scenario)[path]
  if (same !== undefined) return same
  if (path === 'events.powerLoss') return { time: round(duration * 0.7) }
  if (path === 'events.release') return { time: round(duration * 0.9) }
  if (path === 'run.cycle') return round(duration * 2)
  if (path === 'arm.moves') {
    const after = Math.max(duration / 2, ...scenario.arm.moves.map((move) => move.start + move.duration + 0.1))
    return { start: after < duration ? round(after) : round(duration * 0.9) }
  }
  if (path === 'drive.busPower') return round(scenario.drive.busVoltage * scenario.actuator.motor.continuousCurrent)
  if (path === 'window.leastTurns') return round(0.9 * capIn(scenario).closure.engagement)
  if (path === 'line.ramps') return nextRamp(scenario)
  if (path === 'web.breakTension') return round(10 * webIn(scenario).window.most)
  const { output, study, workOf } = jobOf(scenario)
  if (schema?.unit === output.effort)
    return round(2 * (study.window(scenario).least ?? continuousEffort(scenario, workOf(scenario).perEffort)))
  return schema ? (schema.default ?? schema.minimum) : {}
}

/** Keys that stand for something when they are left out start as that. */
const asLeftOut = ({ job, part, jaws, actuator }: Scenario): Record<string, number> => ({
  ...(job === 'grip' && { 'part.gyration': round(gyrationOf(part)), 'jaws.padRadius': padRadiusOf(jaws) }),
  'actuator.transmission.coulombBack': actuator.transmission.coulomb,
  'actuator.transmission.viscousBack': actuator.transmission.viscous,
})

/** Effort that the motor's continuous current gives without friction. */
const continuousEffort = ({ actuator }: Scenario, perEffort: number) =>
  (axisOf(actuator).forcePerAmpere * actuator.motor.continuousCurrent) / perEffort

/** A point of the band behind the last one, with its forces. */
function nextPoint(scenario: Scenario) {
  const last = pressIn(scenario).window.band.at(-1)
  return last ? { ...last, depth: round(last.depth + 0.001) } : {}
}

/** A ramp that begins when the one before is long over: to a stop, or from one. */
function nextRamp(scenario: Scenario) {
  const { duration } = scenario.run
  const last = webIn(scenario).line.ramps.at(-1)
  if (!last) return { start: round(duration / 2), speed: 1 }
  return { ...last, start: round(Math.min(0.99 * duration, last.start + 1)), speed: last.speed > 0 ? 0 : 1 }
}

const round = (value: number) => Number(value.toPrecision(3))
