/** Axes compared for a press, a closure and a web: figures by hand, and the same rule of fitting as for a grip. */
import { describe, expect, it } from 'vitest'
import { core, run } from '../../sim/cli/core.ts'
import {
  ALL_PRESETS,
  allAxes,
  axesFor,
  axisFigures,
  fitAxis,
  type JobId,
  jobOf,
  kindsTaken,
  reportAxis,
  type Scenario,
  strategiesOn,
  wantedEffort,
} from '../../sim/index.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { make } from '../scenario/make.ts'

const presetOf = (id: string): Scenario => ALL_PRESETS.find((preset) => preset.id === id)!.scenario
const [castArm, jarLid, trayFilm] = ['cast-arm', 'jar-lid', 'tray-film'].map(presetOf) as [Scenario, Scenario, Scenario]
const axis = (id: string) => allAxes().find((each) => each.id === id)!
const OTHERS: JobId[] = ['press', 'cap', 'web']

describe('the axes of a job', () => {
  it('are of the kinds that its format knows, two of each family at the least', () => {
    for (const job of ['grip', ...OTHERS] as JobId[]) {
      const axes = axesFor(job)
      expect(new Set(axes.map(({ actuator }) => actuator.kind))).toEqual(new Set(kindsTaken(job)))
      for (const { actuator } of axes)
        expect(axes.filter(({ actuator: { family } }) => family === actuator.family).length).toBeGreaterThan(1)
    }
    expect(new Set(allAxes().map(({ id }) => id)).size).toBe(allAxes().length)
  })

  it('all go with the presets of the job, and ask for the effort that is wanted, or all that the axis gives', () => {
    for (const { scenario } of ALL_PRESETS.filter(({ scenario }) => scenario.job !== 'grip')) {
      const wanted = wantedEffort(scenario)
      for (const { id, actuator } of axesFor(scenario.job)) {
        const fitted = fitAxis(scenario, actuator)
        if (!fitted.ok) throw new Error(`${scenario.name}, ${id}: ${JSON.stringify(fitted.faults)}`)
        const { servo } = fitted.scenario
        for (const strategy of strategiesOn(jobOf(scenario))) {
          const { expected } = strategy.forceOf(fitted.scenario)
          const limited = !strategy.sensed && strategy.settingFor(fitted.scenario, wanted) > servo.currentLimit
          if (limited) expect(expected, `${id} ${strategy.id}`).toBeLessThan(wanted)
          else expect(expected / wanted, `${id} ${strategy.id}`).toBeCloseTo(1, 2) // settings have four digits
        }
      }
    }
  })
})

describe('an axis under a job, by hand', () => {
  it('turns a closure with K·I less friction and the gear’s loss; the liner is met with ω·√(k·J)', () => {
    const { actuator } = axis('spindle-60-gear-5')
    const figures = axisFigures(jarLid, actuator)
    const push = 0.12 * 5 * 18 - 0.12
    // Magnets as warm as the air: those of the data sheet are at 25 °C, as the air of the file is.
    expect(jarLid.actuator.motor.thermal.ambient).toBe(25)
    expect(figures.peak).toBeCloseTo(push * 0.92, 9)
    const inertia = 3e-5 * 25 + 4e-5 + 1.5e-4
    expect(figures.movingMass).toBeCloseTo(inertia, 12)
    // Shigley, eq. 8-1 to 8-6: torque for each newton on a thread of 10° flanks with a collar, by hand.
    const [radius, slope, friction] = [0.03, 0.004233333333333333 / (Math.PI * 0.06), 0.2 / Math.cos(Math.PI / 18)]
    const perNewton = (radius * (friction + slope)) / (1 - friction * slope) + 0.2 * 0.028
    const rate = perNewton * 4e5 * (0.004233333333333333 / (2 * Math.PI))
    const both = (rate * 120) / (rate + 120)
    expect(figures.impact! / (0.12 + 2 * Math.PI * Math.sqrt(both * inertia))).toBeCloseTo(1, 6)
    expect(figures.strokeReserve).toBeNull()
    expect(axisFigures(make(jarLid, { 'approach.creepFrom': 0 }), actuator).impact!).toBeGreaterThan(
      3 * figures.impact!,
    )
  })

  it('pulls a web with its torque over the radius, and meets it with v·√(E·A/L·J)/r', () => {
    const { actuator } = axis('spindle-torque-80')
    const figures = axisFigures(trayFilm, actuator)
    expect(figures.peak).toBeCloseTo((0.45 * 13 - 0.03) / 0.03, 9)
    const inertia = 9e-5 + 2e-5 + jobOf(trayFilm).outputOf(trayFilm).mass
    expect(figures.impact).toBeCloseTo(0.2 * Math.sqrt(4.4e9 * 0.3 * 1.2e-5 * inertia), 9)
    expect(figures.strokeReserve).toBeNull()
  })

  it('presses with what its screw makes of K·I, and meets the shoulder on top of what slides the bushing', () => {
    const { actuator } = axis('press-ball-20x5')
    const figures = axisFigures(castArm, actuator)
    expect(figures.peak / ((0.28 * 24 * 2 * Math.PI) / 0.005)).toBeGreaterThan(0.9)
    const mass = 1.2e-4 * ((2 * Math.PI) / 0.005) ** 2 + 2 + 2
    expect(figures.movingMass).toBeCloseTo(mass, 6)
    const frame = (3e7 * 2e8) / (3e7 + 2e8)
    const slide = figures.impact! - 0.008 * Math.sqrt(frame * mass)
    // What a run shows as the bushing slides along, just before the shoulder.
    const { traces } = simulate(castArm, 'current-clamp', { core }) as unknown as {
      traces: Record<string, Float64Array>
    }
    const before = traces.depth!.findIndex((depth) => depth > 0.0121)
    expect(slide / traces.jointForce![before]!).toBeCloseTo(1, 1)
    const through = make(castArm, { 'bore.shoulder': null, 'window.depth': { least: 0.01 } })
    expect(axisFigures(through, actuator).impact).toBeNull()
  })

  it('is reported with the strategies that make sense, what they make of the work and why', () => {
    const report = reportAxis(trayFilm, axis('spindle-60').actuator, run)
    expect(report.strategies.map(({ strategy }) => strategy)).toEqual(['current-clamp', 'sensed-force'])
    expect(report.strategies.map(({ result }) => result?.verdict)).toEqual(['taut', 'taut'])
    expect(report.windingTemperature).toBeGreaterThan(25)
  })
})

describe('fitting an axis that turns', () => {
  it('keeps the bandwidth of the loop, and the share of the inertia that is fed forward', () => {
    const { actuator } = axis('spindle-torque-110')
    const fitted = fitAxis(jarLid, actuator)
    if (!fitted.ok) throw new Error(JSON.stringify(fitted.faults))
    const perAmpere = (of: Scenario) => {
      const { movingMass } = axisFigures(of, of.actuator)
      const { motor, transmission } = of.actuator as Extract<Scenario['actuator'], { kind: 'spindle' }>
      return movingMass / (motor.torqueConstant * transmission.gearRatio)
    }
    const bandwidth = (of: Scenario) => Math.sqrt(of.servo.kp / perAmpere(of)) / (2 * Math.PI)
    expect(bandwidth(fitted.scenario)).toBeCloseTo(bandwidth(jarLid), 1)
    const share = (of: Scenario) => of.servo.accelerationFeedforward / perAmpere(of)
    expect(share(fitted.scenario)).toBeCloseTo(share(jarLid), 2)
  })
})
