/**
 * What the independent integration takes from a complete scenario, by name and in SI units. Reads both versions of the format:
 * a key may have moved since version 1, and one that version 1 did not know has the value that leaves it without effect.
 */

/** A travelling sine: cogging [N], ripple as a share [1]; period [m]. */
export interface Wave {
  amplitude: number
  period: number
}

export interface Move {
  start: number
  axis: string
  acceleration: number
  duration: number
  jerk: number
}

export type Input = ReturnType<typeof readInput>

const GRAVITY = 9.80665

/** Throws where a key is missing, or where the scenario asks for something that the integration leaves out. */
export function readInput(scenario: object) {
  const read = new Reader(scenario)
  const { number } = read
  if (read.has('actuator.motor.openLoop') && read.value('actuator.motor.openLoop') === true)
    throw new Error('A step motor in open loop is left out.')
  if (read.value('run.cycle') !== null) throw new Error('A duty that repeats is left out.')
  const rate = number('drive.currentRate')
  const servoRate = number('servo.rate')
  const layout = read.value('jaws.layout')
  const contacts = layout === 'mirrored' ? 2 : 1
  const gaugeBandwidth = number('sensors.gauge.bandwidth', 'strategies.sensedForce.sensor.bandwidth')
  return {
    axis: readAxis(read),
    motor: {
      resistance: number('actuator.motor.resistance'),
      inductance: number('actuator.motor.inductance'),
      endLoss: read.has('actuator.motor.endLoss') ? number('actuator.motor.endLoss') : 0,
      magnet: number('actuator.motor.thermal.magnetCoefficient'),
      windingResistance: number('actuator.motor.thermal.windingResistance'),
      windingTime: number('actuator.motor.thermal.windingTime'),
      housingResistance: number('actuator.motor.thermal.housingResistance'),
      housingTime: number('actuator.motor.thermal.housingTime'),
      ambient: number('actuator.motor.thermal.ambient'),
    },
    friction: {
      coulomb: number('actuator.transmission.coulomb'),
      coulombBack: read.or('actuator.transmission.coulombBack', number('actuator.transmission.coulomb')),
      breakaway: number('actuator.transmission.breakaway'),
      stribeckSpeed: number('actuator.transmission.stribeckSpeed'),
      viscous: number('actuator.transmission.viscous'),
      viscousBack: read.or('actuator.transmission.viscousBack', number('actuator.transmission.viscous')),
      bristleStiffness: number('actuator.transmission.bristleStiffness'),
    },
    link: {
      stiffness: number('actuator.transmission.stiffness'),
      damping: number('actuator.transmission.damping'),
      backlash: number('actuator.transmission.backlash'),
    },
    jaws: {
      mirrored: contacts === 2,
      contacts,
      mass: contacts * number('jaws.mass'),
      opening: number('jaws.opening'),
      stroke: number('jaws.stroke'),
      padStiffness: number('jaws.padStiffness'),
      padLength: number('jaws.padLength'),
      padRadius: read.has('jaws.padRadius') ? number('jaws.padRadius') : number('jaws.padLength') / 2,
      staticFriction: number('jaws.friction.static'),
      slidingFriction: number('jaws.friction.sliding'),
      loadExponent: number('jaws.friction.loadExponent'),
      referenceForce: number('jaws.friction.referenceForce'),
    },
    part: {
      width: number('part.width'),
      mass: number('part.mass'),
      /** Offset of the centre of mass from the middle of the pads, and radius of gyration about it [m]. */
      centre: read.has('part.centre')
        ? { up: number('part.centre.up'), across: number('part.centre.across') }
        : { up: 0, across: 0 },
      gyration: read.has('part.gyration') ? number('part.gyration') : number('part.width') / Math.sqrt(8),
      stiffness: number('part.stiffness'),
      exponent: number('part.exponent'),
      damping: number('part.damping'),
      relaxingShare: number('part.relaxation.fraction'),
      relaxationTime: number('part.relaxation.time'),
      yieldForce: read.limit('part.yieldForce'),
      crackForce: read.limit('part.crackForce'),
    },
    drive: {
      period: 1 / rate,
      voltage: number('drive.busVoltage'),
      bandwidth: number('drive.currentBandwidth'),
      resolution: number('drive.currentResolution'),
      noise: number('drive.currentNoise'),
      offset: number('drive.currentOffset'),
      backEmf: number('drive.backEmfFeedforward'),
    },
    servo: {
      every: whole(rate / servoRate),
      period: 1 / servoRate,
      kp: number('servo.kp'),
      ki: number('servo.ki'),
      kd: number('servo.kd'),
      filter: number('servo.speedFilter'),
      velocityFeedforward: number('servo.velocityFeedforward'),
      accelerationFeedforward: number('servo.accelerationFeedforward'),
      proportionalWeight: read.has('servo.setpointWeights') ? number('servo.setpointWeights.proportional') : 1,
      derivativeWeight: read.has('servo.setpointWeights') ? number('servo.setpointWeights.derivative') : 1,
      limit: number('servo.currentLimit'),
      resolution: number('sensors.encoder.resolution', 'servo.encoderResolution'),
    },
    gauge: {
      bandwidth: gaugeBandwidth,
      gainError: number('sensors.gauge.gainError', 'strategies.sensedForce.sensor.gainError'),
      offset: number('sensors.gauge.offset', 'strategies.sensedForce.sensor.offset'),
      drift: number('sensors.gauge.drift', 'strategies.sensedForce.sensor.drift'),
      noise: number('sensors.gauge.noise', 'strategies.sensedForce.sensor.noise'),
      resolution: number('sensors.gauge.resolution', 'strategies.sensedForce.sensor.resolution'),
      fingerMass: number('sensors.gauge.fingerMass', 'strategies.sensedForce.sensor.fingerMass'),
    },
    approach: {
      speed: number('approach.speed'),
      acceleration: number('approach.acceleration'),
      jerk: number('approach.jerk'),
      creepSpeed: number('approach.creepSpeed'),
      creepFrom: number('approach.creepFrom'),
      overtravel: number('approach.overtravel'),
    },
    thresholdStop: {
      threshold: number('strategies.thresholdStop.threshold'),
      confirmTime: number('strategies.thresholdStop.confirmTime'),
      filter: number('strategies.thresholdStop.filter'),
      press: read.value('strategies.thresholdStop.afterwards') === 'press',
    },
    currentClamp: {
      limit: number('strategies.currentClamp.limit'),
      from: number('strategies.currentClamp.from'),
    },
    sensedForce: {
      /** Periods of the servo in one of the force loop. */
      every: whole(servoRate / number('strategies.sensedForce.rate')),
      period: 1 / number('strategies.sensedForce.rate'),
      target: number('strategies.sensedForce.target'),
      contactForce: number('strategies.sensedForce.contactForce'),
      kp: number('strategies.sensedForce.kp'),
      ki: number('strategies.sensedForce.ki'),
      kd: number('strategies.sensedForce.kd'),
      deadBand: number('strategies.sensedForce.deadband'),
      speedLimit: number('strategies.sensedForce.speedLimit'),
      derivativeFilter: read.or('strategies.sensedForce.derivativeFilter', 1 / gaugeBandwidth),
      velocityKp: number('strategies.sensedForce.velocity.kp'),
      velocityKi: number('strategies.sensedForce.velocity.ki'),
    },
    arm: {
      /** Pull of gravity across and along the grip [m/s²]. */
      down: read.value('arm.gravity') === 'across' ? GRAVITY : 0,
      along: read.value('arm.gravity') === 'along' ? GRAVITY : 0,
      upIsAlong: read.value('arm.gravity') === 'along',
      lift: read.value('arm.lift') as number | null,
      moves: read.value('arm.moves') as Move[],
    },
    powerLoss: read.value('events.powerLoss') as { time: number; windings: 'open' | 'shorted' } | null,
    release: read.value('events.release') as { time: number } | null,
    duration: number('run.duration'),
  }
}

/** Reflection to the jaw (design, section 3): force constant [N/A], masses [kg], friction over load [1]. */
function readAxis(read: Reader) {
  const { number } = read
  const carriage = number('actuator.transmission.carriageMass')
  const share = number('actuator.motor.ripple.share')
  const period = number('actuator.motor.ripple.period')
  const cogging = {
    amplitude: number('actuator.motor.cogging.amplitude'),
    period: number('actuator.motor.cogging.period'),
  }
  const kind = read.value('actuator.kind')
  if (kind === 'direct') {
    const mass = number('actuator.motor.movingMass') + carriage
    const forceConstant = number('actuator.motor.forceConstant')
    return {
      forceConstant,
      mass,
      linearMass: mass,
      against: 0,
      along: 0,
      cogging,
      ripple: { amplitude: share, period },
    }
  }
  // travel of the jaw for one radian of the motor
  const c =
    kind === 'screw'
      ? number('actuator.transmission.lead') / (2 * Math.PI)
      : number('actuator.transmission.pinionRadius') / number('actuator.transmission.gearRatio')
  return {
    forceConstant: number('actuator.motor.torqueConstant') / c,
    mass: number('actuator.motor.inertia') / (c * c) + carriage,
    linearMass: carriage,
    ...(kind === 'screw' ? threadFriction(read) : gearFriction(number('actuator.transmission.efficiency'))),
    cogging: { amplitude: cogging.amplitude / c, period: cogging.period * c },
    ripple: { amplitude: share, period: period * c },
  }
}

function threadFriction({ number }: Reader) {
  return screwFriction({
    lead: number('actuator.transmission.lead'),
    diameter: number('actuator.transmission.pitchDiameter'),
    friction: number('actuator.transmission.threadFriction'),
    flankAngle: number('actuator.transmission.flankAngle'),
  })
}

/**
 * Raising and lowering torque of a power screw for one newton [m] without collar (Shigley, Mechanical Engineering Design, 8-2), and
 * what they are above and below the lossless lead/2π, as a share of the load.
 */
export function screwFriction(screw: { lead: number; diameter: number; friction: number; flankAngle: number }) {
  const { lead, diameter } = screw
  const f = screw.friction / Math.cos(screw.flankAngle)
  const around = Math.PI * diameter
  const raise = ((diameter / 2) * (lead + f * around)) / (around - f * lead)
  const lower = ((diameter / 2) * (f * around - lead)) / (around + f * lead)
  const lossless = lead / (2 * Math.PI)
  return { raise, lower, against: raise / lossless - 1, along: 1 + lower / lossless }
}

const gearFriction = (efficiency: number) => ({ against: 1 / efficiency - 1, along: 1 / efficiency - 1 })

function whole(ratio: number): number {
  const rounded = Math.round(ratio)
  if (rounded < 1 || Math.abs(ratio - rounded) > 1e-9) throw new Error(`Rates with the ratio ${ratio} do not divide.`)
  return rounded
}

class Reader {
  private readonly scenario: object

  constructor(scenario: object) {
    this.scenario = scenario
  }

  private find(path: string): unknown {
    return path
      .split('.')
      .reduce<unknown>(
        (at, key) => (at === null || at === undefined ? undefined : (at as Record<string, unknown>)[key]),
        this.scenario,
      )
  }

  has = (path: string) => this.find(path) !== undefined

  value = (path: string) => {
    const value = this.find(path)
    if (value === undefined) throw new Error(`${path} is missing.`)
    return value
  }

  /** The first of the paths that is there. */
  number = (...paths: string[]) => {
    const path = paths.find(this.has)
    const value = path === undefined ? undefined : this.find(path)
    if (typeof value !== 'number') throw new Error(`${paths.join(' or ')} is no number.`)
    return value
  }

  /** The number at a path that may be missing or null, else another. */
  or = (path: string, otherwise: number) => (typeof this.find(path) === 'number' ? this.number(path) : otherwise)

  /** A limit that may be left out: none. */
  limit = (path: string) => (this.has(path) ? this.number(path) : Number.POSITIVE_INFINITY)
}
