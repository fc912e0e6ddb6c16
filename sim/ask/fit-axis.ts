/**
 * Puts another actuator under the same work: gains follow from the wanted bandwidth on the new reflected mass, the settings of
 * the strategies from the wanted effort. Position loop: kp = M·ω²/K, kd = 2ζM·ω/K, ki = kp·ω/10; velocity loop: kp = M·2ω/K,
 * ki = kp·ω/4 (bandwidth and damping of a mass under a PID; common practice for the integral). An output that turns has inertia for mass.
 */
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import { type Actuator, type Checked, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import { strategiesOn } from '../strategy/index.ts'

/** Of the place, not of the motor: it stays. */
const AMBIENT = 'actuator.motor.thermal.ambient'

/** Damping ratio of the position loop. */
const DAMPING = 0.8
const LOWEST_BANDWIDTH = 2 * Math.PI * 10
const HIGHEST_BANDWIDTH = 2 * Math.PI * 60

/** Where the gains of the velocity loop lie. */
const VELOCITY = 'strategies.sensedForce.velocity'

/** Bandwidth of the position loop that the present gains give on the present axis [rad/s]. */
export function positionBandwidth(scenario: Scenario): number {
  return Math.sqrt(scenario.servo.kp / massPerAmpere(scenario, scenario.actuator))
}

/** Moving mass with the output over what an ampere gives [kg·A/N]: current for each m/s². */
function massPerAmpere(scenario: Scenario, actuator: Actuator): number {
  const axis = axisOf(actuator)
  return (axis.mass + jobOf(scenario).outputOf(scenario).mass) / axis.forcePerAmpere
}

/**
 * Effort that is wanted [N or N·m], of a grip the force at one contact: what the present clamp current means. A clamp that stands at the current limit says
 * only what the axis can give; then it is the target of the sensed force.
 */
export function wantedEffort(scenario: Scenario): number {
  const strategies = strategiesOn(jobOf(scenario))
  const clamp = strategies.find(({ feels }) => feels === 'limit')!
  const limited = (readPath(scenario, clamp.setting.path) as number) >= scenario.servo.currentLimit
  const telling = limited ? strategies.find(({ sensed }) => sensed)! : clamp
  return telling.forceOf(scenario).expected
}

/** Gains of position and velocity loop for a bandwidth [rad/s] and a damping ratio on the reflected mass of an actuator. */
export function gainsFor(scenario: Scenario, actuator: Actuator, bandwidth: number, damping = DAMPING) {
  const perAmpere = massPerAmpere(scenario, actuator)
  const kp = rounded(perAmpere * bandwidth * bandwidth)
  const velocityKp = rounded(perAmpere * 2 * bandwidth)
  return {
    servo: { kp, ki: rounded((kp * bandwidth) / 10), kd: rounded(2 * damping * perAmpere * bandwidth) },
    velocity: { kp: velocityKp, ki: rounded((velocityKp * bandwidth) / 4) },
  }
}

/** The scenario with another actuator under it, gains and settings matched; refused where they do not go together. */
export function fitAxis(scenario: Scenario, actuator: Actuator, effort = wantedEffort(scenario)): Checked {
  const { motor } = actuator
  const bandwidth = Math.min(HIGHEST_BANDWIDTH, Math.max(LOWEST_BANDWIDTH, positionBandwidth(scenario)))
  const gains = gainsFor(scenario, actuator, bandwidth)
  const strategies = strategiesOn(jobOf(scenario))
  const heavier = massPerAmpere(scenario, actuator) / massPerAmpere(scenario, scenario.actuator)
  const currentLimit = isOpenLoop({ actuator }) ? motor.continuousCurrent : motor.peakCurrent
  const fitted = {
    ...structuredClone(scenario),
    actuator: structuredClone(actuator),
    servo: {
      ...scenario.servo,
      ...gains.servo,
      velocityFeedforward: 0,
      accelerationFeedforward: rounded(scenario.servo.accelerationFeedforward * heavier),
      currentLimit,
    },
  }
  const inner = Object.entries(gains.velocity).map(([key, value]) => ({ path: `${VELOCITY}.${key}`, value }))
  const limits = strategies
    .filter(({ sensed }) => !sensed)
    .map(({ setting }) => ({
      path: setting.path,
      value: currentLimit,
    }))
  const checked = editScenario(fitted, [...inner, ...limits])
  if (!checked.ok) return checked
  const settings = strategies.map((strategy) => {
    const setting = strategy.settingFor(checked.scenario, effort)
    return { path: strategy.setting.path, value: rounded(strategy.sensed ? setting : Math.min(setting, currentLimit)) }
  })
  const air = { path: AMBIENT, value: scenario.actuator.motor.thermal.ambient }
  return editScenario(checked.scenario, [...settings, air])
}

const rounded = (value: number) => Number(value.toPrecision(4))
