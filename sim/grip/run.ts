/**
 * The fixed-step loop that ties plant and drive together. Per period of the current loop: servo and strategy (at their own
 * whole multiples), current loop with one sample of delay, then the plant's steps in semi-implicit Euler. The small objects
 * below live inside this function, so that the engine keeps their fields in registers.
 */
import { CurrentLoop, currentGains } from '../control/current-loop.ts'
import { Arm, liftTime } from '../plant/arm.ts'
import { axisOf, contactsOf, jawMassOf, travelToContact } from '../plant/axis.ts'
import { Commutation, isOpenLoop } from '../plant/commutation.ts'
import { Side } from '../plant/contact/side.ts'
import { EndStops, stopStiffness } from '../plant/endstops.ts'
import { Friction } from '../plant/friction.ts'
import { Gauge } from '../plant/gauge.ts'
import { Heat, type Temperatures } from '../plant/heat.ts'
import { Noise } from '../plant/noise.ts'
import { quantise } from '../plant/quantise.ts'
import { loadFactor, Slip } from '../plant/slip.ts'
import { Transmission } from '../plant/transmission.ts'
import { Winding } from '../plant/winding.ts'
import type { Scenario } from '../scenario/index.ts'
import { Opening } from '../strategy/opening.ts'
import type { Strategy, StrategyKind } from '../strategy/strategy.ts'
import { Figures } from './figures.ts'
import { Rails } from './rails.ts'
import { type OnChunk, Recorder } from './recorder.ts'
import type { GripEvents, Metrics, Traces } from './result.ts'
import { neededForce } from './window.ts'

export interface Run {
  metrics: Metrics
  events: GripEvents
  traces: Traces
  /** The receiver of the chunks asked to stop. */
  cancelled: boolean
  /** Where the run left its rails, '' if it did not. */
  cause: Rails['cause']
  /** Temperatures at the end. */
  temperatures: Temperatures
}

export interface RunOptions {
  onChunk?: OnChunk | undefined
  /** Temperatures at the start; ambient if left out. */
  start?: Temperatures | undefined
}

export function runGrip(scenario: Scenario, kind: StrategyKind, substeps: number, options: RunOptions = {}): Run {
  const { actuator, jaws, part, drive, servo, run } = scenario
  const period = 1 / drive.currentRate
  const dt = period / substeps
  const samples = Math.round(run.duration / period)
  const perServo = Math.round(drive.currentRate / servo.rate)

  const axis = axisOf(actuator)
  const contacts = contactsOf(scenario)
  const mirrored = contacts === 2
  const jawMass = jawMassOf(scenario)
  const gap = travelToContact(scenario)
  const { mass } = axis
  const partMass = part.mass
  const t = actuator.transmission
  const resistance = actuator.motor.resistance
  const crackForce = part.crackForce ?? Number.POSITIVE_INFINITY
  const stroke = Math.min(jaws.stroke, jaws.opening / contacts)

  const winding = new Winding(actuator.motor.inductance, dt)
  const transmission = new Transmission(t.stiffness, t.damping, t.backlash)
  const commutation = new Commutation(scenario, axis)
  const shaped = !commutation.smooth
  const perCycle = isOpenLoop(scenario) ? 1 / axis.cyclePitch : Number.NaN
  const friction = new Friction(t, mass, axis.raise, axis.lower, dt)
  const stops = new EndStops(stroke, stopStiffness(t.stiffness), jawMass)
  const sideOptions = {
    exponent: part.exponent,
    stiffness: part.stiffness,
    padStiffness: jaws.padStiffness,
    damping: part.damping,
    relaxationFraction: part.relaxation.fraction,
    relaxationTime: part.relaxation.time,
    yieldForce: part.yieldForce ?? Number.POSITIVE_INFINITY,
    step: dt,
  }
  const near = new Side(sideOptions)
  const far = new Side(sideOptions)
  const slip = new Slip({ mass: partMass, padStiffness: jaws.padStiffness, ...jaws.friction, step: dt })
  const arm = new Arm(scenario)
  const heat = new Heat(actuator.motor.thermal, options.start)
  const noise = new Noise(run.seed)
  const currentLoop = new CurrentLoop({
    ...currentGains(resistance, actuator.motor.inductance, drive.currentBandwidth),
    period,
    voltageLimit: drive.busVoltage,
    backEmf: drive.backEmfFeedforward * axis.forceConstant,
  })
  let strategy: Strategy = kind.create(scenario)
  const { sensed } = kind
  const gauge = new Gauge(scenario.strategies.sensedForce.sensor, period, run.seed)
  const recorder = new Recorder(samples, options.onChunk)
  const figures = new Figures(scenario, samples)
  const rails = new Rails(10 * Math.max(jaws.stroke, jaws.opening))

  const lift = liftTime(scenario)
  const powerLoss = scenario.events.powerLoss?.time ?? Number.POSITIVE_INFINITY
  const release = scenario.events.release?.time ?? Number.POSITIVE_INFINITY
  const shorted = scenario.events.powerLoss?.windings === 'shorted'
  const events: GripEvents = {
    lift: null,
    engaged: null,
    crack: null,
    slip: null,
    drop: null,
    release: null,
    unstable: null,
  }

  let x = 0 // motor side, jaw, part: position and speed
  let v = 0
  let jawX = 0
  let jawV = 0
  let partX = 0
  let partV = 0
  let nearForce = 0
  let farForce = 0
  let reading = 0
  let command = 0
  let voltage = 0
  let nextVoltage = 0
  let peak = 0
  let peakTime = Number.NaN
  let hanging = false // the part's support is gone
  let out = false // the part has left the jaws
  let opening = false
  let powered = true
  let cancelled = false
  const { now } = recorder

  for (let k = 0; k < samples; k++) {
    const time = k * period
    arm.at(time)
    if (powered && time >= powerLoss) powered = false
    if (powered && !opening && time >= release) {
      opening = true
      hanging = false
      events.engaged = Number.isFinite(strategy.engaged) ? strategy.engaged : null
      strategy = new Opening(scenario, x, time)
    }
    if (!hanging && !out && !opening && time >= lift) {
      hanging = nearForce + farForce > 0
      if (hanging) {
        events.lift = time
        slip.hang(arm.down, arm.side)
      } else out = true // nothing grips it: it stays behind
    }

    if (k % perServo === 0) {
      const i = winding.current
      heat.step(i * i * resistance * heat.resistance, perServo * period)
      if (sensed) reading = gauge.read(time)
      if (powered) command = strategy.tick({ time, position: quantise(x, servo.encoderResolution), force: reading })
    }
    voltage = nextVoltage
    if (powered) {
      let measured = winding.current + drive.currentOffset
      if (drive.currentNoise > 0) measured += drive.currentNoise * noise.normal()
      nextVoltage = currentLoop.tick(command, quantise(measured, drive.currentResolution), strategy.measuredSpeed)
    } else {
      command = 0
      nextVoltage = 0
      voltage = 0
      if (!shorted) winding.current = 0
    }

    const constant = axis.forceConstant * heat.flux
    const { target } = strategy
    const coil = resistance * heat.resistance
    const connected = powered || shorted
    const carriedMotor = mirrored ? 0 : axis.linearMass * arm.along
    const carriedJaw = mirrored ? 0 : jawMass * arm.along
    const pull = hanging ? arm.along : 0
    const speedBefore = jawV
    const gripped = hanging ? loadFactor(jaws.friction, 0.5 * (nearForce + farForce)) : 1
    let nearMost = 0
    let farMost = 0

    for (let n = 0; n < substeps; n++) {
      const forceConstant = shaped ? constant * commutation.factor(x, target) : constant
      const current = connected ? winding.step(voltage, forceConstant * v, coil) : 0
      const link = transmission.force(x - jawX, v - jawV)
      if (!out) {
        nearForce = near.step(jawX - gap - partX, jawV - partV)
        farForce = mirrored ? far.step(jawX - gap + partX, jawV + partV) : far.step(partX, partV)
      }
      let motor = forceConstant * current - link - friction.force(v, link) + carriedMotor
      if (shaped) motor += commutation.cogging(x)
      const load = mirrored ? nearForce + farForce : nearForce
      v += (dt * motor) / mass
      jawV += (dt * (link - load + stops.force(jawX, jawV) + carriedJaw)) / jawMass
      x += dt * v
      jawX += dt * jawV
      if (!out) {
        partV += dt * ((nearForce - farForce) / partMass + pull)
        partX += dt * partV
        if (hanging) slip.step(gripped * (nearForce + farForce), arm.down, arm.side)
      }
      if (nearForce > nearMost) nearMost = nearForce
      if (farForce > farMost) farMost = farForce
      const force = nearForce > farForce ? nearForce : farForce
      if (force > peak) {
        if (peak === 0) {
          figures.contactTime = time + n * dt
          figures.contactSpeed = jawV
        }
        peak = force
        peakTime = time + n * dt
        if (force > crackForce && events.crack === null) {
          events.crack = peakTime
          near.crack()
          far.crack()
        }
      }
    }

    if (sensed) gauge.feel(nearForce, (jawV - speedBefore) / period - arm.along)
    let needed = 0
    let holds = Number.POSITIVE_INFINITY
    if (hanging) {
      const across = Math.sqrt(arm.down * arm.down + arm.side * arm.side)
      needed = neededForce(scenario, across, arm.along)
      if (across > 0 && !out) holds = (jaws.friction.static * gripped * (nearForce + farForce)) / (partMass * across)
      if (slip.sliding && events.slip === null) events.slip = time
      if (!out && slip.distance > jaws.padLength) {
        events.drop = time
        out = true
        nearForce = 0
        farForce = 0
      }
    }
    if (opening && events.release === null && nearForce + farForce === 0) events.release = time
    figures.sample(
      time,
      nearForce,
      farForce,
      winding.current,
      v,
      jawX,
      needed,
      holds,
      heat.winding,
      perCycle * (target - x),
    )
    now[0] = time
    now[1] = nearMost
    now[2] = farMost
    now[3] = winding.current
    now[4] = command
    now[5] = voltage
    now[6] = jawX
    now[7] = target
    now[8] = x
    now[9] = jawV
    now[10] = partX
    now[11] = slip.sag
    now[12] = slip.drift
    now[13] = 0.5 * (near.dent + far.dent) // each side counts the flattening of the whole part
    now[14] = heat.winding
    now[15] = reading
    now[16] = strategy.wantedSpeed
    if (!recorder.sample()) {
      cancelled = true
      break
    }
    if (rails.check(time, jawX, winding.current, powered ? strategy.saturated : 0, powered ? currentLoop.saturated : 0))
      break
  }

  figures.peakForce = peak
  figures.peakForceTime = peakTime
  if (!opening) events.engaged = Number.isFinite(strategy.engaged) ? strategy.engaged : null
  events.unstable = Number.isFinite(rails.left) ? rails.left : null
  return {
    metrics: figures.metrics(slip.distance),
    events,
    traces: recorder.finish(),
    cancelled,
    cause: rails.cause,
    temperatures: { winding: heat.winding, housing: heat.housing },
  }
}
