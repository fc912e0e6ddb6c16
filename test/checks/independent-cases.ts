/** Whole grips that the simulator and the independent integration both run: presets and hostile variants of them, without noise. */
import { PRESETS, type Scenario } from '../../sim/index.ts'
import { quantitiesOf } from '../scenario/schema-walk.ts'
import { merge, scenarioOf, type Tree } from './support.ts'

interface Case {
  name: string
  preset: string
  changes?: Tree
  gauge?: Tree
}

const MOVES = [
  { start: 0.4, axis: 'up', acceleration: 6, duration: 0.2, jerk: 400 },
  { start: 0.62, axis: 'across', acceleration: 8, duration: 0.2, jerk: 500 },
]
const ALONG = [
  { start: 0.4, axis: 'along', acceleration: 5, duration: 0.2, jerk: 400 },
  { start: 0.62, axis: 'along', acceleration: -7, duration: 0.2, jerk: 500 },
]
/** Back and forth in the plane of the pads, hard enough to slide. */
const SHAKE = [
  { start: 0.4, axis: 'across', acceleration: 40, duration: 0.08, jerk: 8000 },
  { start: 0.5, axis: 'across', acceleration: -40, duration: 0.08, jerk: 8000 },
]
/** Smooth pads, so long that nothing falls out of them. */
const smooth = (opening: number, friction: Tree) => ({ jaws: { opening, padLength: 0.2, friction } })

const run = (duration: number) => ({ run: { duration } })
/** The jaws start nearer to the teapot, which does not break. */
const NEAR_TEAPOT = { jaws: { opening: 0.124 }, part: { crackForce: 1e6 }, arm: { moves: MOVES }, ...run(0.85) }
const NEAR_BAUBLE = { jaws: { opening: 0.085 }, part: { crackForce: 1e6 }, arm: { moves: MOVES }, ...run(0.85) }
const NEAR_APRICOT = { jaws: { opening: 0.052 }, arm: { moves: MOVES }, ...run(0.85) }
const NEAR_FOAM = { jaws: { opening: 0.103 }, arm: { moves: MOVES }, ...run(0.85) }
const NEAR_BUSHING = { jaws: { opening: 0.052 }, arm: { moves: MOVES }, ...run(0.85) }

const RACK = {
  kind: 'rack',
  family: 'geared-rack',
  motor: {
    resistance: 0.9,
    inductance: 0.0008,
    torqueConstant: 0.04,
    inertia: 2.5e-6,
    continuousCurrent: 3,
    peakCurrent: 9,
  },
  transmission: {
    pinionRadius: 0.008,
    gearRatio: 6,
    efficiency: 0.85,
    carriageMass: 0.2,
    coulomb: 3,
    breakaway: 4,
    viscous: 15,
  },
}

const CASES: Case[] = [
  ...PRESETS.map(({ id, title }) => ({ name: title, preset: id })),
  { name: 'screw, part does not break', preset: 'teapot', changes: NEAR_TEAPOT },
  {
    name: 'breaks at the impact',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, part: { crackForce: 50 }, approach: { speed: 0.08 } },
  },
  {
    name: 'screw against a fixed jaw, gravity and moves along the grip',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, jaws: { layout: 'anvil', opening: 0.122 }, arm: { gravity: 'along', moves: ALONG } },
  },
  {
    name: 'rounded part',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, part: { crackForce: 1e6, exponent: 1.5, stiffness: 1.2e7 } },
  },
  {
    name: 'play and thread friction',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      actuator: { transmission: { backlash: 8e-5, threadFriction: 0.05 } },
      approach: { speed: 0.03 },
    },
  },
  {
    name: 'slides as the arm shakes it sideways',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      ...smooth(0.124, { static: 0.3, sliding: 0.25 }),
      arm: { moves: SHAKE },
      strategies: { thresholdStop: { threshold: 1.13 }, currentClamp: { limit: 1.1 }, sensedForce: { target: 25 } },
    },
  },
  {
    name: 'slides up and down in free space',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      ...smooth(0.124, { static: 0.3, sliding: 0.25 }),
      arm: { gravity: 'none', moves: SHAKE.map((move) => ({ ...move, axis: 'up' })) },
      strategies: { thresholdStop: { threshold: 1.13 }, currentClamp: { limit: 1.1 }, sensedForce: { target: 25 } },
    },
  },
  {
    name: 'low bus voltage, coarse current, offset, feed-forward',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      drive: { busVoltage: 14, currentResolution: 0.02, currentOffset: 0.03, backEmfFeedforward: 0.8 },
      servo: { velocityFeedforward: 0.4, accelerationFeedforward: 0.08 },
    },
  },
  {
    name: 'stops, then presses on; clamps only near the part',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      strategies: { thresholdStop: { afterwards: 'press', filter: 0 }, currentClamp: { from: 0.1195 } },
    },
  },
  {
    name: 'slow loops',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      drive: { currentRate: 8000, currentBandwidth: 2000 },
      servo: { rate: 1000, kp: 4000, ki: 40000, kd: 35, speedFilter: 0.001 },
      strategies: { sensedForce: { rate: 500, velocity: { kp: 50, ki: 2000 } } },
    },
  },
  {
    name: 'gear and rack',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      actuator: RACK,
      servo: { kp: 5000, ki: 60000, kd: 30 },
      strategies: { thresholdStop: { threshold: 3 }, currentClamp: { limit: 3 } },
    },
  },
  {
    name: 'gear and rack against a fixed jaw, moves along the grip',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      actuator: RACK,
      jaws: { layout: 'anvil', opening: 0.122 },
      servo: { kp: 5000, ki: 60000, kd: 30 },
      strategies: { thresholdStop: { threshold: 1.6 }, currentClamp: { limit: 1.6 } },
      arm: { moves: ALONG },
    },
  },
  {
    name: 'voice coil with cogging, ripple and weak ends',
    preset: 'bauble',
    changes: {
      ...NEAR_BAUBLE,
      actuator: {
        motor: { endLoss: 0.2, cogging: { amplitude: 0.3, period: 0.006 }, ripple: { share: 0.03, period: 0.002 } },
      },
    },
  },
  {
    name: 'voice coil, gravity along the grip',
    preset: 'bauble',
    changes: { ...NEAR_BAUBLE, arm: { gravity: 'along', moves: MOVES } },
  },
  {
    name: 'bauble slides as the arm shakes it sideways',
    preset: 'bauble',
    changes: {
      ...NEAR_BAUBLE,
      ...smooth(0.085, { static: 0.15, sliding: 0.12 }),
      arm: { moves: SHAKE },
      strategies: { sensedForce: { target: 2.5 }, currentClamp: { limit: 0.25 }, thresholdStop: { threshold: 0.3 } },
      approach: { speed: 0.05 },
    },
  },
  {
    name: 'gauge with errors, all gains of the force loop',
    preset: 'bauble',
    changes: {
      ...NEAR_BAUBLE,
      strategies: { sensedForce: { ki: 0.01, kd: 2e-6, deadband: 0.0001 } },
    },
    gauge: { gainError: -0.04, offset: 0.15, drift: 0.2, bandwidth: 1500, fingerMass: 0.02 },
  },
  { name: 'fruit without creep zone', preset: 'apricot', changes: { ...NEAR_APRICOT, approach: { creepFrom: 0 } } },
  {
    name: 'fruit against a fixed jaw, moves along the grip',
    preset: 'apricot',
    changes: {
      ...NEAR_APRICOT,
      jaws: { layout: 'anvil', opening: 0.049 },
      arm: { moves: ALONG },
      approach: { creepFrom: 0 },
    },
  },
  {
    name: 'foam that yields',
    preset: 'foam',
    changes: {
      ...NEAR_FOAM,
      part: { yieldForce: 5 },
      strategies: { thresholdStop: { threshold: 0.7 }, currentClamp: { limit: 0.7 }, sensedForce: { target: 4.6 } },
    },
  },
  { name: 'foam, stiffer', preset: 'foam', changes: { ...NEAR_FOAM, part: { stiffness: 8000 } } },
  {
    name: 'foam slides, friction falls with load',
    preset: 'foam',
    changes: {
      ...NEAR_FOAM,
      ...smooth(0.103, { static: 0.06, sliding: 0.05, loadExponent: 0.75 }),
      arm: { moves: SHAKE },
    },
  },
  {
    name: 'self-locking thread, power lost',
    preset: 'bushing',
    changes: { ...NEAR_BUSHING, events: { powerLoss: { time: 0.38, windings: 'open' } } },
  },
  {
    name: 'coil that warm magnets weaken, shorted at power loss',
    preset: 'apricot',
    changes: {
      ...NEAR_APRICOT,
      actuator: { motor: { thermal: { ambient: 80 } } },
      events: { powerLoss: { time: 0.6, windings: 'shorted' } },
    },
  },
  {
    name: 'opens again',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, events: { release: { time: 0.7 } }, arm: { moves: [] }, run: { duration: 0.9 } },
  },
  {
    name: 'contact exponent 1.25',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, part: { ...NEAR_TEAPOT.part, exponent: 1.25, stiffness: 1.4e6 } },
  },
  {
    name: 'friction that differs by direction',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, actuator: { transmission: { coulombBack: 9, viscousBack: 60 } } },
  },
  {
    name: 'held beside its centre of mass, swings on its pads',
    preset: 'teapot',
    changes: { ...NEAR_TEAPOT, part: { ...NEAR_TEAPOT.part, centre: { up: 0.004, across: 0.01 }, gyration: 0.03 } },
  },
  {
    name: 'turns in the pads as it hangs beside its centre of mass',
    preset: 'teapot',
    changes: {
      ...NEAR_TEAPOT,
      ...smooth(0.124, { static: 0.3, sliding: 0.25 }),
      part: { ...NEAR_TEAPOT.part, centre: { up: -0.005, across: 0.02 } },
      strategies: { thresholdStop: { threshold: 0.9 }, currentClamp: { limit: 0.9 }, sensedForce: { target: 18 } },
    },
  },
  {
    name: 'turns and slides as the arm shakes it, friction falls with load',
    preset: 'foam',
    changes: {
      ...NEAR_FOAM,
      jaws: {
        opening: 0.103,
        padLength: 0.2,
        padRadius: 0.02,
        friction: { static: 0.12, sliding: 0.1, loadExponent: 0.75 },
      },
      part: { centre: { up: -0.03, across: 0.015 } },
      arm: { moves: SHAKE },
    },
  },
]

export interface WholeGrip {
  name: string
  scenario: Scenario
}

/** Keys of the gauge, in either version of the format. */
const gaugeOf = (scenario: Scenario, gauge: Tree): Tree =>
  'sensors' in scenario ? { sensors: { gauge } } : { strategies: { sensedForce: { sensor: gauge } } }

function wholeGrip({ name, preset, changes = {}, gauge = {} }: Case): WholeGrip {
  const from = PRESETS.find(({ id }) => id === preset)!.scenario
  // another kind of axis takes nothing of the preset's
  const below = changes.actuator && 'kind' in (changes.actuator as object) ? { ...from, actuator: {} } : from
  const quiet = merge({ drive: { currentNoise: 0 } }, gaugeOf(from, { ...gauge, noise: 0 }))
  return { name, scenario: scenarioOf(below as unknown as Tree, quiet, changes) }
}

/** Cases that are taken once more with every quantity of the hardware changed, and by so much at most as a factor. */
const WILD = 14
const REACH = 1.6

/** What a wild grip leaves as it is: rates, places that have to fit each other, times, and weights that may keep the jaws from the part. */
const KEPT =
  /rate$|^run\.|^arm\.|^events\.|width$|opening$|stroke$|creepFrom$|from$|exponent$|Exponent$|centre|currentLimit$|setpointWeights/i

/** 0 … 1, by a key and a number: another key leaves the others what they are. */
function lot(key: string, number: number): number {
  let word = Math.imul(number + 1, 0x9e3779b1)
  for (const letter of key) word = Math.imul(word ^ letter.charCodeAt(0), 0x01000193)
  word = Math.imul(word ^ (word >>> 15), 0x85ebca6b)
  return ((word ^ (word >>> 13)) >>> 0) / 2 ** 32
}

function wildGrip({ name, scenario }: WholeGrip, number: number): WholeGrip {
  const wild = structuredClone(scenario) as unknown as Tree
  for (const { path, schema } of quantitiesOf(scenario.actuator.kind)) {
    if (schema.type === 'integer' || path.includes('[') || KEPT.test(path)) continue
    const keys = path.split('.')
    const last = keys.pop()!
    const parent = keys.reduce<Tree | undefined>((tree, key) => tree?.[key] as Tree | undefined, wild)
    const value = parent?.[last]
    if (typeof value !== 'number') continue
    const factor = REACH ** (2 * lot(path, number) - 1)
    parent![last] = Math.min(schema.maximum, Math.max(schema.minimum, value * factor))
  }
  const { jaws, actuator, servo } = wild as unknown as {
    jaws: { friction: { static: number; sliding: number } }
    actuator: { motor: Tree & { peakCurrent: number }; transmission: Tree & { breakaway: number } }
    servo: { currentLimit: number }
  }
  jaws.friction.sliding = Math.min(jaws.friction.sliding, jaws.friction.static)
  const { motor, transmission } = actuator
  transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb as number)
  motor.peakCurrent = Math.max(motor.peakCurrent, motor.continuousCurrent as number, servo.currentLimit)
  return { name: `${name}, all else`, scenario: scenarioOf(wild) }
}

/** Every so many of the cases that were thought of is drawn again. */
export function wholeGrips(): WholeGrip[] {
  const thought = CASES.map(wholeGrip)
  const apart = thought.length / WILD
  const wild = Array.from({ length: WILD }, (_, n) => wildGrip(thought[Math.floor(n * apart)]!, n))
  return [...thought, ...wild]
}
