import { isOpenLoop } from '../../axis/reflect.ts'
import type { Edit, Scenario } from '../../scenario/index.ts'
import { fillApproach } from '../follow.ts'
import { MachineId } from '../machine-id.ts'
import { set } from '../position.ts'
import type { DriveQuantity, ForceBand, SheetRow, StrategyKind } from '../strategy.ts'
import { derivativeFilterOf } from './filter.ts'
import type { SensedForce } from './machine.ts'

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

const key = (name: string) => `strategies.sensedForce.${name}`

/** Range end of the schema: a gauge that lags behind nothing [1/s]. */
const INSTANT = 1e6

/** The filter on the derivative of the force, which goes by the gauge where none is set, stays as it is. */
function instantGauge(scenario: Scenario): Edit[] {
  if (scenario.sensors.gauge.bandwidth >= INSTANT) return []
  return [set('sensors.gauge.bandwidth', INSTANT), set(key('derivativeFilter'), derivativeFilterOf(scenario))]
}

const row = (
  name: string,
  label: string,
  unit: string,
  gives: DriveQuantity,
  gain: Partial<SheetRow> = {},
): SheetRow => ({
  path: key(name),
  label,
  unit,
  gives,
  ...gain,
})

const SHEET: SheetRow[] = [
  row('velocity.kp', 'Velocity, proportional', 'A·s/m', 'current', { error: 'speed' }),
  row('velocity.ki', 'Velocity, integral', 'A/m', 'current', { error: 'speed', over: { loop: 'servo', power: 1 } }),
  row('target', 'Target force', 'N', 'force'),
  row('contactForce', 'Contact force', 'N', 'force'),
  row('kp', 'Force, proportional', 'm/(N·s)', 'speed', { error: 'force' }),
  row('ki', 'Force, integral', 'm/(N·s²)', 'speed', { error: 'force', over: { loop: 'force', power: 1 } }),
  row('kd', 'Force, derivative', 'm/N', 'speed', { error: 'force', over: { loop: 'force', power: -1 } }),
  row('deadband', 'Dead band', 'm/s', 'speed'),
  row('speedLimit', 'Speed limit', 'm/s', 'speed'),
]

export const sensedForce: StrategyKind<SensedForce> = {
  id: 'sensed-force',
  label: 'Sensed force',
  summary: 'Feels contact with a gauge and closes a force loop around a velocity loop, with a dead band between.',
  machine: MachineId.sensedForce,
  fill(machine, scenario, work) {
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
  setting: { brief: 'presses with', path: key('target'), label: 'Target force', unit: 'N' },
  settingFor: ({ sensors }, force) => {
    const { gainError, offset } = sensors.gauge
    return force * (1 + gainError) + offset
  },
  forceOf: sensedBand,
  set: (target) => [set(key('target'), target)],
  search: {
    settings: ['target', 'contactForce', 'deadband', 'speedLimit'].map(key),
    gains: ['kp', 'ki', 'kd', 'velocity.kp', 'velocity.ki'].map(key),
    rate: key('rate'),
    first: {
      [key('kp')]: ({ strategies }) => strategies.sensedForce.speedLimit / strategies.sensedForce.target / 10,
      [key('ki')]: ({ strategies }) => strategies.sensedForce.kp,
      [key('kd')]: ({ strategies }) => strategies.sensedForce.kp / 1000,
      [key('deadband')]: ({ strategies }) => strategies.sensedForce.speedLimit / 1000,
      [key('velocity.kp')]: () => 1,
      [key('velocity.ki')]: ({ strategies }) => strategies.sensedForce.velocity.kp,
    },
  },
  causes: {
    detection: instantGauge,
    windup: () => [set(key('ki'), 0)],
    stopping: () => [],
    travel: () => [],
    deadband: () => [set(key('deadband'), 0)],
  },
  feels: 'gauge',
  ground: ({ backDrivable }) => ({ kind: backDrivable ? 'gauge and give' : 'gauge and lock' }),
  sheet: SHEET,
  look: {
    dash: [2, 3],
    border: 'dotted',
    light: { line: '#008f68', text: '#007654' },
    dark: { line: '#1fb88c', text: '#1fb88c' },
  },
}
