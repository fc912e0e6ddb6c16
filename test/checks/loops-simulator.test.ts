/**
 * The linear loops against the time simulation: the gain margin is where the simulated loop starts to oscillate, and a set of
 * sines through the simulated loop lies on the predicted response. Dry friction, noise and steps of measurement are off.
 */
import { describe, expect, it } from 'vitest'
import { tryLoop } from '../../sim/ask/loop-trial.ts'
import { currentGains } from '../../sim/control/gains.ts'
import type { Scenario } from '../../sim/index.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'
import { Cascade } from '../../sim/loops/cascade.ts'
import { MultirateResponse } from '../../sim/loops/multirate.ts'
import { LoopResponse } from '../../sim/loops/response.ts'
import { type WorkingPointId, workingPoint } from '../../sim/loops/working-point.ts'
import { boundless, CYCLES, coil, growth, screw } from './calm-axes.ts'
import { bin, ratio } from './signals.ts'

const SCREW = screw()
const COIL = coil()
const AXES: [string, Scenario][] = [
  ['ball screw', SCREW],
  ['voice coil', COIL],
]
const POINTS: WorkingPointId[] = ['free', 'nominal']

/** The current loop alone, as many samples as asked for: the servo ticks with it, so that a sine of the set point is one. */
function currentRun(scenario: Scenario, samples: number, command: (time: number) => number, gain = 1) {
  const { currentRate } = scenario.drive
  const { answer } = tryLoop(
    { ...scenario, servo: { ...scenario.servo, rate: currentRate } },
    {
      loop: 'current',
      point: workingPoint(scenario, 'free'),
      duration: samples / currentRate,
      gain,
      disturbance: command,
    },
  )
  return answer
}

describe('the gain margin is where the simulated loop starts to oscillate', () => {
  for (const [name, scenario] of AXES) {
    const free = { ...scenario, drive: { ...scenario.drive, backEmfFeedforward: 0 } }
    it(`${name}, current loop`, () => {
      const [loop] = analyseLoops(free, { loops: ['current'], workingPoints: ['free'] }).loops
      const gain = 10 ** (loop!.margins!.gainMargin! / 20)
      const at = (factor: number) => growth(currentRun(free, 600, () => 0.1, gain * factor))
      expect(at(0.95)).toBeLessThan(0.5)
      expect(at(1.05)).toBeGreaterThan(2)
    })

    for (const loop of ['position', 'velocity', 'force'] as const) {
      for (const id of loop === 'force' ? (['softest', 'nominal', 'stiffest'] as const) : POINTS) {
        it(`${name}, ${loop} loop, ${id}`, () => {
          const point = workingPoint(scenario, id)
          const [analysis] = analyseLoops(scenario, { loops: [loop], workingPoints: [id] }).loops
          const { gainMargin, gainMarginFrequency } = analysis!.margins!
          const gain = 10 ** (gainMargin! / 20)
          const kick = (time: number) => (time < 0.002 ? (loop === 'force' ? 1e-5 : 1e-3) : 0)
          const at = (factor: number) =>
            growth(
              tryLoop(boundless(scenario), {
                loop,
                point,
                duration: CYCLES / gainMarginFrequency!,
                gain: gain * factor,
                disturbance: kick,
              }).given,
            )
          expect(at(0.95)).toBeLessThan(0.5)
          expect(at(1.05)).toBeGreaterThan(2)
        })
      }
    }
  }
})

describe('sines through the simulated loop lie within 0.5 dB and 3° of the prediction', () => {
  for (const [name, scenario] of AXES) {
    for (const loop of ['position', 'velocity', 'force'] as const) {
      for (const id of loop === 'force' ? (['nominal'] as const) : POINTS) {
        it(`${name}, ${loop} loop, ${id}`, () => {
          const point = workingPoint(scenario, id)
          const cascade = new Cascade(scenario, point)
          const model = cascade.loop(loop)
          const response = new LoopResponse(cascade.closedPoles(loop), model.openPoles)
          const window = Math.round(0.5 / model.period) // bins of 2 Hz
          const cycles = [3, 5, 8, 13, 20, 32, 50, 80, 100].filter((n) => n / window <= 1 / 20)
          const size = loop === 'force' ? 1e-5 : 0.002
          const { given, got } = tryLoop(scenario, {
            loop,
            point,
            duration: 1.5,
            disturbance: (time) =>
              cycles.reduce((sum, n, i) => sum + size * Math.sin(2 * Math.PI * n * 2 * time + i * i), 0),
          })
          for (const n of cycles) {
            const measured = ratio(bin(given, window, n), bin(got, window, n))
            response.at((2 * Math.PI * n) / window)
            const predicted = ratio({ re: -response.re, im: -response.im }, { re: 1, im: 0 })
            expect(Math.abs(measured.decibels - predicted.decibels), `${2 * n} Hz`).toBeLessThan(0.5)
            expect(Math.abs(turn(measured.degrees - predicted.degrees)), `${2 * n} Hz`).toBeLessThan(3)
          }
        })
      }
    }

    it(`${name}, current loop, closed`, () => {
      const free = { ...scenario, drive: { ...scenario.drive, backEmfFeedforward: 0 } }
      // The command is held: no servo around it.
      const response = new MultirateResponse(new Cascade(free, workingPoint(free, 'free')).currentLoop(false))
      const { currentRate } = free.drive
      for (const n of [5, 10, 20, 40, 50]) {
        const command = (time: number) => 0.1 * Math.sin(2 * Math.PI * n * (currentRate / 1000) * time)
        const measured = ratio(
          bin(currentRun(free, 2000, command), 1000, n),
          bin(
            Array.from({ length: 1000 }, (_, k) => command(k / currentRate)),
            1000,
            n,
          ),
        )
        response.at((2 * Math.PI * n) / 1000)
        const predicted = ratio({ re: response.re, im: response.im }, { re: 1 + response.re, im: response.im })
        expect(Math.abs(measured.decibels - predicted.decibels), `bin ${n}`).toBeLessThan(0.5)
        expect(Math.abs(turn(measured.degrees - predicted.degrees)), `bin ${n}`).toBeLessThan(3)
      }
    })
  }
})

const turn = (degrees: number) => degrees - 360 * Math.round(degrees / 360)

it('the current gains of the model are those of the drive', () => {
  const { motor } = SCREW.actuator
  const { gain } = { gain: currentGains(motor.resistance, motor.inductance, SCREW.drive.currentBandwidth).kp }
  expect(Math.max(...new Cascade(SCREW, workingPoint(SCREW, 'free')).currentLoop().input)).toBeCloseTo(
    gain + (motor.resistance * SCREW.drive.currentBandwidth) / SCREW.drive.currentRate / 2,
    9,
  )
})
