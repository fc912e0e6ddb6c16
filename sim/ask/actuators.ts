/**
 * Which axis suits the job: for one axis under one scenario the figures by which an engineer chooses, in closed form, and what
 * the simulator makes of it.
 */

import { dutyTemperatures } from '../axis/cooling.ts'
import { forcePerAmpereAt } from '../axis/flux.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import type { RunResult } from '../job/job.ts'
import type { Actuator, Fault, Scenario } from '../scenario/index.ts'
import { strategiesOn, strategyOf } from '../strategy/index.ts'
import type { AxisFacts, Ground, StrategyId } from '../strategy/strategy.ts'
import { fitAxis, wantedEffort } from './fit-axis.ts'
import { type Runner, runHere } from './runner.ts'

export type PowerLossFate = 'locks' | 'holds by friction' | 'lets go'

export interface StrategyFitness {
  strategy: StrategyId
  /** Its setting means the effort it says. */
  honest: boolean
  ground: Ground
  /** What the simulator made of it; null where the scenario was refused. */
  result: RunResult | null
}

/**
 * What an axis is under the work, drive and arm of a scenario, in closed form. Efforts are those of the job [N or N·m], of a grip at one
 * contact; speeds [m/s or rad/s], masses [kg or kg·m²].
 */
export interface AxisFigures {
  continuous: number
  peak: number
  /** Half-width of the effort that friction can hide at the wanted one. */
  frictionBand: number
  backDrivable: boolean
  movingMass: number
  /** Highest effort of the first impact, all the energy of the moving mass in what is met; null: nothing is. */
  impact: number | null
  /** Highest speed at bus voltage and continuous current. */
  topSpeed: number
  /** Way left beyond the end of the approach [m]; null: the output turns. */
  strokeReserve: number | null
  powerLoss: PowerLossFate
}

export interface AxisReport extends AxisFigures {
  actuator: Actuator
  /** The scenario with this axis, gains and settings matched; null where it was refused. */
  scenario: Scenario | null
  faults: Fault[]
  /** Highest of any strategy [°C]. */
  windingTemperature: number | null
  strategies: StrategyFitness[]
}

/** Friction may hide so much of the wanted force before a current no longer tells it; common practice, no source. */
const HONEST_BAND = 0.2

/** Report on `actuator` under the work, drive and arm of `scenario`, with the effort that its clamp means now. */
export function reportAxis(scenario: Scenario, actuator: Actuator, run = runHere): AxisReport {
  const effort = wantedEffort(scenario)
  const fitted = actuator === scenario.actuator ? { ok: true as const, scenario } : fitAxis(scenario, actuator, effort)
  const report: AxisReport = {
    actuator,
    scenario: fitted.ok ? fitted.scenario : null,
    faults: fitted.ok ? [] : fitted.faults,
    ...axisFigures(scenario, actuator, effort),
    windingTemperature: null,
    strategies: [],
  }
  report.strategies = strategiesOn(jobOf(scenario)).map(({ id }) => fitness(scenario, report, id, effort, run))
  return report
}

/** `effort` is the one that is wanted [N or N·m]. */
export function axisFigures(scenario: Scenario, actuator: Actuator, effort = wantedEffort(scenario)): AxisFigures {
  const axis = axisOf(actuator)
  const { motor, transmission } = actuator
  const job = jobOf(scenario)
  const work = job.workOf(scenario)
  const output = job.outputOf(scenario)
  const mass = axis.mass + output.mass
  const topSpeed = Math.max(
    0,
    (scenario.drive.busVoltage -
      motor.resistance * Math.min(motor.continuousCurrent, currentToRun(scenario, actuator))) /
      forcePerAmpereAt(actuator),
  )
  // What drives the axis back without current.
  const back = axis.lower < 1 ? transmission.breakaway / (work.perEffort * (1 - axis.lower)) : null
  return {
    ...axisEfforts(scenario, actuator),
    frictionBand: frictionBand(scenario, actuator, effort),
    backDrivable: back !== null,
    movingMass: mass,
    impact: job.impactOf(scenario, mass),
    topSpeed,
    strokeReserve: job.output.travel === 'rad' ? null : work.stroke - work.touch - scenario.approach.overtravel,
    powerLoss: back === null ? 'locks' : back > effort ? 'holds by friction' : 'lets go',
  }
}

/**
 * Effort [N or N·m] at continuous and at peak current, friction and losses of the way taken off: the first with magnets as warm as that
 * current makes them for ever, the second with a motor from cold.
 */
export function axisEfforts(scenario: Scenario, actuator: Actuator) {
  const { raise } = axisOf(actuator)
  const { continuousCurrent, peakCurrent, resistance, thermal } = actuator.motor
  const { perEffort } = jobOf(scenario).workOf(scenario)
  const warm = dutyTemperatures(thermal, resistance, continuousCurrent, 1).housing
  const effortAt = (current: number, magnets: number) => {
    const push = forcePerAmpereAt(actuator, magnets) * current - actuator.transmission.coulomb
    return Math.max(0, push / (perEffort * (1 + raise)))
  }
  return { continuous: effortAt(continuousCurrent, warm), peak: effortAt(peakCurrent, thermal.ambient) }
}

/** Half of what friction hides: break-away and the load's share, with it and against it. */
function frictionBand(scenario: Scenario, actuator: Actuator, effort: number): number {
  const axis = axisOf(actuator)
  const share = (axis.raise + Math.min(axis.lower, 1)) / 2
  return actuator.transmission.breakaway / jobOf(scenario).workOf(scenario).perEffort + share * effort
}

function currentToRun(scenario: Scenario, actuator: Actuator): number {
  const { coulomb, viscous } = actuator.transmission
  return (coulomb + viscous * scenario.approach.speed) / forcePerAmpereAt(actuator)
}

function fitness(
  scenario: Scenario,
  report: AxisReport,
  strategy: StrategyId,
  effort: number,
  run: Runner,
): StrategyFitness {
  const ground = strategyOf(strategy).ground(factsOf(scenario, report, effort))
  const result = report.scenario ? run(report.scenario, strategy).result : null
  const temperature = result?.metrics.windingTemperature ?? null
  if (temperature !== null) report.windingTemperature = Math.max(report.windingTemperature ?? temperature, temperature)
  return {
    strategy,
    honest: HONEST.has(ground.kind),
    ground,
    result,
  }
}

const HONEST = new Set<Ground['kind']>(['readable', 'impact below wanted', 'gauge and give', 'gauge and lock'])

function factsOf(scenario: Scenario, report: AxisReport, wanted: number): AxisFacts {
  const share = report.frictionBand / wanted
  return {
    openLoop: isOpenLoop(report),
    backDrivable: report.backDrivable,
    wanted,
    continuous: report.continuous,
    impact: report.impact,
    limit: jobOf(scenario).study.window(scenario).most ?? Number.POSITIVE_INFINITY,
    share,
    readable: share <= HONEST_BAND,
  }
}
