/**
 * Yardstick: the grip of the basic screw axis by a current clamp, flattened by hand into one function of local variables. The
 * arithmetic is that of runGrip in the same order, so the traces agree to the last bit (flat.test.ts). Whatever is asked less
 * often than the plant (arm, profile, heat, noise, recorder, figures, rails) stays an object, the same for both; recorder and
 * figures read a Plant and a Drive, which serve here as boards that a sample's results are written on.
 */

import { stopStiffness } from '../../sim/axis/endstops.ts'
import { LOAD_DAMPING, LOAD_REACH } from '../../sim/axis/friction.ts'
import { currentGains } from '../../sim/control/current-loop.ts'
import { smoothing } from '../../sim/control/filters.ts'
import { Noise } from '../../sim/core/noise.ts'
import { Drive } from '../../sim/cycle/drive.ts'
import { Figures } from '../../sim/cycle/figures.ts'
import { Rails } from '../../sim/cycle/rails.ts'
import { Recorder } from '../../sim/cycle/recorder.ts'
import { axisOf, type Scenario, strategyOf, travelToContact } from '../../sim/index.ts'
import { jawMassOf } from '../../sim/job/grip/geometry.ts'
import type { GripEvents } from '../../sim/job/grip/result.ts'
import { shearStiffness } from '../../sim/job/grip/slip.ts'
import { neededForce } from '../../sim/job/grip/window.ts'
import { Plant } from '../../sim/plant/plant.ts'
import type { Run } from '../../sim/run/run.ts'
import { liftTime } from '../../sim/scenario/lift.ts'
import { approachProfile, clampLimit } from '../../sim/strategy/follow.ts'

/** Throws where the scenario has more to it than the basic screw axis. */
function checkBasic({ actuator, jaws, part, run, events }: Scenario): void {
  const basic =
    actuator.kind === 'screw' &&
    !actuator.motor.openLoop &&
    actuator.motor.cogging.amplitude === 0 &&
    actuator.motor.ripple.share === 0 &&
    actuator.transmission.threadFriction > 0 &&
    actuator.transmission.backlash === 0 &&
    jaws.layout === 'mirrored' &&
    jaws.friction.loadExponent === 1 &&
    part.exponent === 1 &&
    part.relaxation.fraction === 0 &&
    part.yieldForce === undefined &&
    run.cycle === null &&
    events.powerLoss === null &&
    events.release === null
  if (!basic) throw new RangeError('only the basic screw axis with a linear part and without events is flattened')
}

export function flatGrip(scenario: Scenario, substeps: number): Run {
  checkBasic(scenario)
  const { actuator, jaws, part, servo, run } = scenario
  const period = 1 / scenario.drive.currentRate
  const dt = period / substeps
  const samples = Math.round(run.duration / period)
  const perServo = Math.round(scenario.drive.currentRate / servo.rate)

  const axis = axisOf(actuator)
  const { mass, raise, lower } = axis
  const jawMass = jawMassOf(scenario)
  const gap = travelToContact(scenario)
  const partMass = part.mass
  const { coulomb, breakaway, stribeckSpeed, viscous, bristleStiffness, stiffness, damping } = actuator.transmission
  const { resistance, inductance } = actuator.motor
  const electric = dt / inductance
  const rise = breakaway - coulomb
  const stribeck = 1 / (stribeckSpeed * stribeckSpeed)
  const bristleDamping = Math.sqrt(bristleStiffness * mass) / dt
  const loadDamping = LOAD_DAMPING / dt
  const stroke = Math.min(jaws.stroke, jaws.opening / 2)
  const stop = stopStiffness(stiffness)
  const stopDamping = Math.sqrt(stop * jawMass)
  const pad = jaws.padStiffness
  const halfPad = 0.5 * pad
  const contactDamping = 2 * part.damping
  const crackForce = part.crackForce ?? Number.POSITIVE_INFINITY
  const shear = shearStiffness(pad)
  const shearDamping = 0.2 * Math.sqrt(shear * partMass)
  const perPartMass = 1 / partMass
  const muStatic = jaws.friction.static
  const muSliding = jaws.friction.sliding

  const { currentBandwidth, backEmfFeedforward, busVoltage, currentOffset, currentNoise, currentResolution } =
    scenario.drive
  const gains = currentGains(resistance, inductance, currentBandwidth)
  const currentIntegralStep = gains.ki * period
  const currentGain = gains.kp + currentIntegralStep / 2
  const backEmf = backEmfFeedforward * axis.forceConstant
  const bus = busVoltage
  const encoderStep = scenario.sensors.encoder.resolution
  const { kd, velocityFeedforward, accelerationFeedforward } = servo
  const servoPeriod = 1 / servo.rate
  const servoIntegralStep = servo.ki * servoPeriod
  const servoGain = servo.kp + servoIntegralStep / 2
  const speedWeight = smoothing(servo.speedFilter, servoPeriod)
  const speedRate = 1 / servoPeriod
  const clamp = clampLimit(scenario)
  const clampFrom = (jaws.opening - scenario.strategies.currentClamp.from) / 2

  const plant = new Plant(scenario, period, substeps)
  const drive = new Drive(scenario, strategyOf('current-clamp'))
  const strategy: { wantedSpeed: number } = drive.strategy
  const { arm, heat } = plant
  const noise = new Noise(run.seed)
  const profile = approachProfile(scenario)
  const recorder = new Recorder(samples)
  const figures = new Figures(scenario, samples)
  const rails = new Rails(10 * Math.max(jaws.stroke, jaws.opening))
  const lift = liftTime(scenario)
  const events: GripEvents = {
    lift: null,
    engaged: null,
    crack: null,
    slip: null,
    drop: null,
    release: null,
    unstable: null,
  }

  let current = 0
  let bristle = 0
  let loadBristle = 0
  let partStiffness = part.stiffness
  let series = (partStiffness * pad) / (partStiffness + halfPad)
  let seriesDamping = (contactDamping * pad) / (pad + 2 * partStiffness)
  let x = 0
  let v = 0
  let jawX = 0
  let jawV = 0
  let partX = 0
  let partV = 0
  let nearForce = 0
  let farForce = 0
  let sag = 0
  let sagSpeed = 0
  let sagStretch = 0
  let drift = 0
  let driftSpeed = 0
  let driftStretch = 0
  let slid = 0
  let sliding = false

  let limit = clampFrom > 0 ? servo.currentLimit : clamp
  let primed = false
  let lastPosition = 0
  let measuredSpeed = 0
  let servoIntegral = 0
  let servoSaturated = 0
  let currentIntegral = 0
  let currentSaturated = 0
  let engaged = Number.NaN
  let target = 0
  let wantedSpeed = 0
  let command = 0
  let voltage = 0
  let nextVoltage = 0

  let peak = 0
  let hanging = false
  let out = false

  for (let k = 0; k < samples; k++) {
    const time = k * period
    arm.at(time)
    if (!hanging && !out && time >= lift) {
      hanging = nearForce + farForce > 0
      if (hanging) {
        events.lift = time
        sagStretch = (partMass * arm.down) / shear
        driftStretch = (partMass * arm.side) / shear
        sag = sagStretch
        drift = driftStretch
      } else out = true
    }

    if (k % perServo === 0) {
      heat.step(current * current * resistance * heat.resistance, perServo * period)
      const position = encoderStep > 0 ? Math.floor(x / encoderStep + 0.5) * encoderStep : x
      profile.at(time)
      target = profile.position
      wantedSpeed = profile.speed
      if (position >= clampFrom) limit = clamp
      const error = target - position
      if (primed) measuredSpeed += speedWeight * ((position - lastPosition) * speedRate - measuredSpeed)
      primed = true
      lastPosition = position
      const direct =
        servoGain * error +
        kd * (wantedSpeed - measuredSpeed) +
        velocityFeedforward * wantedSpeed +
        accelerationFeedforward * profile.acceleration
      const wanted = direct + servoIntegral
      servoSaturated = wanted > limit ? 1 : wanted < -limit ? -1 : 0
      if (servoSaturated * error <= 0) servoIntegral += servoIntegralStep * error
      command = Math.max(-limit, Math.min(limit, wanted))
      if (servoSaturated <= 0 || profile.acceleration > 0) engaged = Number.NaN
      else if (Number.isNaN(engaged)) engaged = time
    }
    voltage = nextVoltage
    let measured = current + currentOffset
    if (currentNoise > 0) measured += currentNoise * noise.normal()
    if (currentResolution > 0) measured = Math.floor(measured / currentResolution + 0.5) * currentResolution
    const currentError = command - measured
    const wantedVoltage = currentGain * currentError + currentIntegral + backEmf * measuredSpeed
    currentSaturated = wantedVoltage > bus ? 1 : wantedVoltage < -bus ? -1 : 0
    if (currentSaturated * currentError <= 0) currentIntegral += currentIntegralStep * currentError
    nextVoltage = Math.max(-bus, Math.min(bus, wantedVoltage))

    const forceConstant = axis.forceConstant * heat.flux
    const coil = resistance * heat.resistance
    const { along, down, side } = arm
    const pull = hanging ? along : 0
    let nearMost = 0
    let farMost = 0

    for (let n = 0; n < substeps; n++) {
      current = (current + electric * (voltage - forceConstant * v)) / (1 + electric * coil)
      const link = stiffness * (x - jawX) + damping * (v - jawV)

      if (!out) {
        const nearSqueeze = jawX - gap - partX
        nearForce = 0
        if (nearSqueeze > 0) {
          const force = series * nearSqueeze * (1 + seriesDamping * (jawV - partV))
          if (force > 0) nearForce = force
        }
        const farSqueeze = jawX - gap + partX
        farForce = 0
        if (farSqueeze > 0) {
          const force = series * farSqueeze * (1 + seriesDamping * (jawV + partV))
          if (force > 0) farForce = force
        }
      }

      const move = v * dt
      const path = move < 0 ? -move : move
      const level = coulomb + rise / (1 + v * v * stribeck)
      const old = bristle
      bristle = ((old + move) * level) / (level + bristleStiffness * path + 1e-300)
      const loadOld = loadBristle
      loadBristle = ((loadOld + move) * LOAD_REACH) / (LOAD_REACH + path)
      const share = loadBristle * link > 0 ? raise : lower
      const friction =
        bristleStiffness * bristle +
        bristleDamping * (bristle - old) +
        viscous * v +
        ((share * (link < 0 ? -link : link)) / LOAD_REACH) * (loadBristle + loadDamping * (loadBristle - loadOld))

      let stopForce = 0
      if (jawX < 0) {
        const force = -stop * jawX - stopDamping * jawV
        if (force > 0) stopForce = force
      } else if (jawX > stroke) {
        const force = -stop * (jawX - stroke) - stopDamping * jawV
        if (force < 0) stopForce = force
      }

      v += (dt * (forceConstant * current - link - friction)) / mass
      jawV += (dt * (link - (nearForce + farForce) + stopForce)) / jawMass
      x += dt * v
      jawX += dt * jawV
      if (!out) {
        partV += dt * ((nearForce - farForce) / partMass + pull)
        partX += dt * partV
        if (hanging) {
          const y = shear * sagStretch + shearDamping * sagSpeed
          const z = shear * driftStretch + shearDamping * driftSpeed
          const grip = nearForce + farForce
          const cap = (sliding ? muSliding : muStatic) * grip
          if (y * y + z * z > cap * cap) {
            const scale = (muSliding * grip) / Math.sqrt(y * y + z * z)
            sliding = true
            sagStretch = (y * scale) / shear
            driftStretch = (z * scale) / shear
            slid += dt * Math.sqrt(sagSpeed * sagSpeed + driftSpeed * driftSpeed)
            sagSpeed += dt * (down - y * scale * perPartMass)
            driftSpeed += dt * (side - z * scale * perPartMass)
          } else {
            sliding = false
            sagSpeed += dt * (down - y * perPartMass)
            driftSpeed += dt * (side - z * perPartMass)
            sagStretch += dt * sagSpeed
            driftStretch += dt * driftSpeed
          }
          sag += dt * sagSpeed
          drift += dt * driftSpeed
        }
      }

      if (nearForce > nearMost) nearMost = nearForce
      if (farForce > farMost) farMost = farForce
      const force = nearForce > farForce ? nearForce : farForce
      if (force > peak) {
        if (peak === 0) {
          plant.contactTime = time + n * dt
          plant.contactTravel = jawX
          plant.contactSpeed = jawV
        }
        peak = force
        plant.peakTime = time + n * dt
        if (force > crackForce && events.crack === null) {
          events.crack = time + n * dt
          partStiffness *= 0.02
          series = (partStiffness * pad) / (partStiffness + halfPad)
          seriesDamping = (contactDamping * pad) / (pad + 2 * partStiffness)
        }
      }
    }

    let needed = 0
    let holds = Number.POSITIVE_INFINITY
    if (hanging) {
      const across = Math.sqrt(down * down + side * side)
      needed = neededForce(scenario, across, along)
      if (across > 0 && !out) holds = (muStatic * (nearForce + farForce)) / (partMass * across)
      if (sliding && events.slip === null) events.slip = time
      if (!out && slid > jaws.padLength) {
        events.drop = time
        out = true
        nearForce = 0
        farForce = 0
      }
    }
    plant.nearForce = nearForce
    plant.farForce = farForce
    plant.nearMost = nearMost
    plant.farMost = farMost
    plant.peak = peak
    plant.winding.current = current
    plant.x = x
    plant.v = v
    plant.jawX = jawX
    plant.jawV = jawV
    plant.partX = partX
    plant.hanging = hanging
    plant.out = out
    plant.slip.sag = sag
    plant.slip.drift = drift
    plant.slip.distance = slid
    drive.command = command
    drive.voltage = voltage
    strategy.wantedSpeed = wantedSpeed
    figures.sample(time, plant, needed, holds, Number.NaN)
    recorder.sample(time, plant, drive, target)
    if (rails.check(time, jawX, current, servoSaturated, currentSaturated)) break
  }

  events.engaged = Number.isFinite(engaged) ? engaged : null
  events.unstable = Number.isFinite(rails.left) ? rails.left : null
  return {
    metrics: figures.metrics(plant),
    events,
    traces: recorder.finish(),
    cancelled: false,
    cause: rails.cause,
    temperatures: { winding: heat.winding, housing: heat.housing },
    weakest: Number.isFinite(figures.weakest) ? figures.weakest : null,
  }
}
