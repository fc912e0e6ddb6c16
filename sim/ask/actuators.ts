/**
 * Which axis suits the part: for one axis under one scenario the figures by which an engineer chooses, in closed form, and what
 * the simulator makes of it.
 */

import { dutyTemperatures } from '../axis/cooling.ts'
import { forcePerAmpereAt } from '../axis/flux.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { contactsOf, jawMassOf, travelToContact } from '../job/grip/geometry.ts'
import type { GripResult } from '../job/grip/result.ts'
import { impactForce, touchSpeed } from '../job/grip/statics.ts'
import { damageLimit } from '../job/grip/window.ts'
import type { Actuator, Fault, Scenario } from '../scenario/index.ts'
import { STRATEGIES, strategyOf } from '../strategy/index.ts'
import type { AxisFacts, Ground, StrategyId } from '../strategy/strategy.ts'
import { fitAxis, wantedForce } from './fit-axis.ts'
import { type Runner, runHere } from './runner.ts'

export type PowerLossFate = 'locks' | 'holds by friction' | 'lets go'

export interface StrategyFitness {
  strategy: StrategyId
  /** Its setting means the force it says. */
  honest: boolean
  ground: Ground
  /** What the simulator made of it; null where the scenario was refused. */
  result: GripResult | null
}

/** What an axis is under the part, jaws, drive and arm of a scenario, in closed form. Forces are at one contact [N], speeds [m/s], masses [kg]. */
export interface AxisFigures {
  continuousForce: number
  peakForce: number
  /** Half-width of the force that friction can hide at the wanted grip force. */
  frictionBand: number
  backDrivable: boolean
  /** Force at one contact that drives the axis back without current; null: none does. */
  backDriveForce: number | null
  movingMass: number
  /** Highest force of the first impact, all the energy of the moving mass in pads and part. */
  impactForce: number
  /** Highest speed at bus voltage and continuous current, and over the approach speed. */
  topSpeed: number
  speedReserve: number
  /** [m] */
  strokeReserve: number
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

/** Report on `actuator` under the part, jaws, drive and arm of `scenario`, with the grip force that its clamp means now. */
export function reportAxis(scenario: Scenario, actuator: Actuator, run = runHere): AxisReport {
  const force = wantedForce(scenario)
  const fitted = actuator === scenario.actuator ? { ok: true as const, scenario } : fitAxis(scenario, actuator, force)
  const report: AxisReport = {
    actuator,
    scenario: fitted.ok ? fitted.scenario : null,
    faults: fitted.ok ? [] : fitted.faults,
    ...axisFigures(scenario, actuator, force),
    windingTemperature: null,
    strategies: [],
  }
  report.strategies = STRATEGIES.map(({ id }) => fitness(report, id, force, run))
  return report
}

/** `force`: grip force at one contact that is wanted [N]. */
export function axisFigures(scenario: Scenario, actuator: Actuator, force = wantedForce(scenario)): AxisFigures {
  const axis = axisOf(actuator)
  const { motor, transmission } = actuator
  const mass = axis.mass + jawMassOf(scenario)
  const topSpeed = Math.max(
    0,
    (scenario.drive.busVoltage -
      motor.resistance * Math.min(motor.continuousCurrent, currentToRun(scenario, actuator))) /
      forcePerAmpereAt(actuator),
  )
  const back = axis.lower < 1 ? transmission.breakaway / (contactsOf(scenario) * (1 - axis.lower)) : null
  return {
    ...axisForces(scenario, actuator),
    frictionBand: frictionBand(scenario, actuator, force),
    backDrivable: axis.lower < 1,
    backDriveForce: back,
    movingMass: mass,
    impactForce: impactForce(scenario, mass, touchSpeed(scenario)),
    topSpeed,
    speedReserve: topSpeed / scenario.approach.speed,
    strokeReserve: scenario.jaws.stroke - travelToContact(scenario) - scenario.approach.overtravel,
    powerLoss: back === null ? 'locks' : back > force ? 'holds by friction' : 'lets go',
  }
}

/**
 * Force at one contact [N] at continuous and at peak current, friction and losses of the way taken off: the first with magnets as warm
 * as that current makes them for ever, the second with a motor from cold.
 */
export function axisForces(scenario: Pick<Scenario, 'jaws'>, actuator: Actuator) {
  const { raise } = axisOf(actuator)
  const { continuousCurrent, peakCurrent, resistance, thermal } = actuator.motor
  const warm = dutyTemperatures(thermal, resistance, continuousCurrent, 1).housing
  const forceAt = (current: number, magnets: number) => {
    const push = forcePerAmpereAt(actuator, magnets) * current - actuator.transmission.coulomb
    return Math.max(0, push / (contactsOf(scenario) * (1 + raise)))
  }
  return { continuousForce: forceAt(continuousCurrent, warm), peakForce: forceAt(peakCurrent, thermal.ambient) }
}

/** Half of what friction hides at one contact [N]: break-away and the load's share, with it and against it. */
function frictionBand(scenario: Scenario, actuator: Actuator, force: number): number {
  const axis = axisOf(actuator)
  const share = (axis.raise + Math.min(axis.lower, 1)) / 2
  return actuator.transmission.breakaway / contactsOf(scenario) + share * force
}

function currentToRun(scenario: Scenario, actuator: Actuator): number {
  const { coulomb, viscous } = actuator.transmission
  return (coulomb + viscous * scenario.approach.speed) / forcePerAmpereAt(actuator)
}

function fitness(report: AxisReport, strategy: StrategyId, force: number, run: Runner): StrategyFitness {
  const ground = strategyOf(strategy).ground(factsOf(report, force))
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

function factsOf(report: AxisReport, wanted: number): AxisFacts {
  const share = report.frictionBand / wanted
  return {
    openLoop: isOpenLoop(report),
    backDrivable: report.backDrivable,
    wanted,
    continuous: report.continuousForce,
    impact: report.impactForce,
    limit: report.scenario ? damageLimit(report.scenario) : Number.POSITIVE_INFINITY,
    share,
    readable: share <= HONEST_BAND,
  }
}
