import { isOpenLoop } from '../../axis/reflect.ts'
import type { Scenario } from '../../scenario/index.ts'
import { fillApproach } from '../follow.ts'
import { MachineId } from '../machines.ts'
import type { ForceBand, StrategyKind } from '../strategy.ts'
import { derivativeFilterOf } from './filter.ts'
import { SensedForce } from './machine.ts'

/**
 * Force that the target means: the gauge's own errors, and the dead band, inside which the axis stands still; with an
 * integral the band is left in the end, so it counts only where there is none.
 */
function sensedBand({ strategies, sensors }: Scenario): ForceBand {
  const { target, kp, ki, deadband } = strategies.sensedForce
  const { gauge } = sensors
  const expected = Math.max(0, (target - gauge.offset) / (1 + gauge.gainError))
  const slack = ki === 0 && kp > 0 ? deadband / kp / (1 + gauge.gainError) : 0
  return { expected, least: Math.max(0, expected - slack), most: expected + slack }
}

export const sensedForce: StrategyKind = {
  id: 'sensed-force',
  label: 'Sensed force',
  summary: 'Feels contact with a gauge and closes a force loop around a velocity loop, with a dead band between.',
  machine: MachineId.sensedForce,
  fill(machine, scenario, work) {
    if (!(machine instanceof SensedForce)) throw new TypeError('not the machine of sensed force')
    const { servo, approach } = scenario
    const { target, contactForce, rate, kp, ki, kd, deadband, speedLimit, velocity } = scenario.strategies.sensedForce
    const period = 1 / servo.rate
    fillApproach(machine.course, scenario, work)
    machine.forceLoop.setPi(kp, ki, 1 / rate)
    machine.forceLoop.kd = kd
    machine.forceLoop.slope.set(derivativeFilterOf(scenario), 1 / rate)
    machine.forceLoop.limit = speedLimit
    machine.velocityLoop.setPi(velocity.kp, velocity.ki, period)
    machine.velocityLoop.limit = servo.currentLimit
    machine.speedometer.set(servo.speedFilter, period)
    machine.openLoop = isOpenLoop(scenario) ? 1 : 0
    machine.goal = target
    machine.contact = contactForce
    machine.band = deadband
    machine.rise = approach.acceleration * period
    machine.period = period
    machine.perForce = Math.round(servo.rate / rate)
  },
  sensed: true,
  setting: { path: 'strategies.sensedForce.target', label: 'Target force', unit: 'N' },
  settingFor: ({ sensors }, force) => {
    const { gainError, offset } = sensors.gauge
    return force * (1 + gainError) + offset
  },
  forceOf: sensedBand,
}
