import { describe, expect, it } from 'vitest'
import {
  analyseLoops,
  editScenario,
  LOOPS,
  missingLoops,
  PRESETS,
  type Scenario,
  workingPointsOf,
} from '../../sim/index.ts'
import type { GripContact } from '../../sim/loops/jobs/grip.ts'
import { stabilityOf } from '../../sim/loops/stability.ts'
import { WEB_PRESETS } from '../../sim/others.ts'
import { scenarioOf } from '../checks/support.ts'
import { frictionIn, noteIn } from '../say/support.ts'

const edited = (scenario: Scenario, edits: Record<string, unknown>): Scenario => {
  const made = editScenario(
    scenario,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!made.ok) throw new Error(JSON.stringify(made.faults))
  return made.scenario
}

const BASE = scenarioOf()

describe('analyseLoops', () => {
  it('gives four loops at all working points for every preset, all figures finite', () => {
    for (const { scenario } of PRESETS) {
      const { loops } = analyseLoops(scenario, { curves: true })
      expect(loops.map(({ loop, workingPoint }) => `${loop} ${workingPoint}`)).toEqual(
        LOOPS.flatMap((loop) => workingPointsOf(scenario).map((point) => `${loop} ${point}`)),
      )
      for (const { curves, step, poles, margins } of loops) {
        for (const list of [...Object.values(curves!), step!.time]) expect(list.every(Number.isFinite)).toBe(true)
        expect(poles.every(({ re, im }) => Number.isFinite(re) && Number.isFinite(im))).toBe(true)
        for (const value of Object.values(margins ?? {})) if (typeof value === 'number') expect(value).not.toBeNaN()
      }
    }
  })

  it('rises in frequency up to the Nyquist frequency of each loop', () => {
    for (const { curves, period } of analyseLoops(BASE, { curves: true, workingPoints: ['nominal'] }).loops) {
      const { frequency } = curves!
      for (let i = 1; i < frequency.length; i++) expect(frequency[i]).toBeGreaterThanOrEqual(frequency[i - 1]!)
      expect(frequency.at(-1)).toBeCloseTo(Math.PI / period, 6)
    }
  })

  it('says of an unstable loop that it is unstable, and gives no margin', () => {
    const wild = edited(BASE, { 'strategies.sensedForce.velocity.kp': 8000 })
    const [loop] = analyseLoops(wild, { loops: ['velocity'], workingPoints: ['free'] }).loops
    expect(loop!.stable).toBe(false)
    expect(loop!.margins).toBeNull()
    expect(loop!.crossover).not.toBeNull()
    expect(noteIn(loop!)).toMatch(/^Unstable: \d+ of \d+ poles .* No margin exists\./)
  })

  it('says why a loop has no crossover', () => {
    const [free] = analyseLoops(BASE, { loops: ['force'], workingPoints: ['free'] }).loops
    expect(free!.crossover).toBeNull()
    expect(free!.margins).toMatchObject({ crossover: null, phaseMargin: null, bandwidth: null })
    expect(noteIn(free!)).toMatch(/in free air the gauge feels nothing but the inertia/)
    const idle = edited(BASE, { 'servo.kp': 0, 'servo.ki': 0, 'servo.kd': 0 })
    const [position] = analyseLoops(idle, { loops: ['position'], workingPoints: ['nominal'] }).loops
    expect(position!.crossover).toBeNull()
    expect(noteIn(position!)).toMatch(/no bandwidth and no phase margin/)
  })

  it('tells a conditionally stable loop', () => {
    const [loop] = analyseLoops(BASE, { loops: ['position'], workingPoints: ['free'] }).loops
    const { lowerGainMargin } = loop!.margins!
    expect(lowerGainMargin).toBeLessThan(0)
    expect(loop!.remarks).toContainEqual({ kind: 'conditionally stable', fall: -lowerGainMargin! })
    expect(noteIn(loop!)).toMatch(/Conditionally stable/)
  })

  it('finds every stable loop still stable just inside its gain margins and unstable just outside', () => {
    const gains: Record<string, string[]> = {
      position: ['servo.kp', 'servo.ki', 'servo.kd'],
      velocity: ['strategies.sensedForce.velocity.kp', 'strategies.sensedForce.velocity.ki'],
      force: ['strategies.sensedForce.kp', 'strategies.sensedForce.ki'],
    }
    for (const { scenario } of PRESETS) {
      const { loops } = analyseLoops(scenario, { loops: ['position', 'velocity', 'force'] })
      for (const { loop, workingPoint, stable, margins } of loops) {
        if (!stable) continue
        for (const margin of [margins!.gainMargin, margins!.lowerGainMargin]) {
          if (margin === null) continue
          for (const share of [0.99, 1.01]) {
            const factor = 10 ** ((margin * share) / 20)
            const change = Object.fromEntries(gains[loop]!.map((path) => [path, factor * read(scenario, path)]))
            const [other] = analyseLoops(edited(scenario, change), {
              loops: [loop],
              workingPoints: [workingPoint],
            }).loops
            expect(other!.stable, `${loop} ${workingPoint} ${margin} dB × ${share}`).toBe(share < 1)
          }
        }
      }
    }
  })

  it('moves with the spread and the force asked for', () => {
    const at = (options: object) =>
      analyseLoops(PRESETS.find(({ id }) => id === 'apricot')!.scenario, { workingPoints: ['stiffest'], ...options })
        .workingPoints[0]!.contact!.stiffness
    expect(at({ spread: 0.5 })).toBeGreaterThan(at({ spread: 0.1 }))
    expect(at({ force: 8 })).toBeGreaterThan(at({ force: 2 }))
  })

  it.each([
    [{ spread: 1 }, /spread: given 1, allowed 0 to 0.99/],
    [{ spread: Number.NaN }, /spread: given NaN/],
    [{ force: 0 }, /force: given 0 N, allowed above 0 N/],
  ])('refuses %o', (options, message) => {
    expect(() => analyseLoops(BASE, options)).toThrow(message)
  })

  it('shows only the current loop of a step motor in open loop, and says why', () => {
    const stepper = edited(BASE, { 'actuator.family': 'step-screw', 'actuator.motor.openLoop': true })
    const result = analyseLoops(stepper)
    const { loops } = result
    expect(new Set(loops.map(({ loop }) => loop))).toEqual(new Set(['current']))
    expect(missingLoops(result)).toMatch(/open loop/)
    expect(loops[0]!.stable).toBe(true)
  })

  it('states what dry friction does', () => {
    expect(frictionIn(analyseLoops(BASE))).toMatch(/At rest friction of up to 8 N/)
    const smooth = edited(BASE, {
      'actuator.transmission.coulomb': 0,
      'actuator.transmission.breakaway': 0,
      'actuator.transmission.threadFriction': 0,
    })
    expect(frictionIn(analyseLoops(smooth))).toMatch(/no dry friction/)
  })

  it('names a part that breaks or yields below the working force', () => {
    const brittle = edited(BASE, { 'part.crackForce': 10 })
    expect(noteIn(analyseLoops(brittle, { loops: ['force'], workingPoints: ['nominal'] }).loops[0]!)).toMatch(
      /crack at 10 N/,
    )
    const soft = edited(BASE, { 'part.yieldForce': 12 })
    expect(noteIn(analyseLoops(soft, { loops: ['force'], workingPoints: ['nominal'] }).loops[0]!)).toMatch(
      /yields at 12 N/,
    )
  })
})

describe('what is neither stable nor unstable', () => {
  it('a pole off the unit circle by rounding is on the border, not unstable', () => {
    for (const size of [1, 1 + 2e-16, 1 - 2e-16, 1 + 1e-12])
      expect(
        stabilityOf(
          [
            { re: size, im: 0 },
            { re: 0.5, im: 0 },
          ],
          5e-5,
        ),
      ).toBe('border')
    expect(stabilityOf([{ re: 1 + 1e-6, im: 0 }], 5e-5)).toBe('unstable')
    expect(stabilityOf([{ re: 1 - 1e-6, im: 0 }], 5e-5)).toBe('stable')
  })

  it('an axis without any friction has no loop that doubles in more than an hour', () => {
    for (const { scenario } of PRESETS) {
      const slick = edited(scenario, {
        'actuator.transmission.coulomb': 0,
        'actuator.transmission.breakaway': 0,
        'actuator.transmission.viscous': 0,
      })
      for (const { loop, workingPoint, stability, remarks } of analyseLoops(slick).loops) {
        expect(stability, `${scenario.name} ${loop} ${workingPoint}`).toBe('stable')
        expect(remarks.map(({ kind }) => kind)).not.toContain('unstable')
      }
    }
  })

  it('a step motor in open loop without friction coasts for ever, and that is no instability', () => {
    const coasting = edited(BASE, {
      'actuator.family': 'step-screw',
      'actuator.motor.openLoop': true,
      'actuator.transmission.coulomb': 0,
      'actuator.transmission.breakaway': 0,
      'actuator.transmission.viscous': 0,
      'drive.backEmfFeedforward': 0,
    })
    const [free] = analyseLoops(coasting, { workingPoints: ['free'] }).loops
    expect(free!.remarks.map(({ kind }) => kind)).not.toContain('unstable')
    expect(['stable', 'border']).toContain(free!.stability)
  })
})

it('the integral of the velocity loop is content with any force where the work holds the output still, and not where a web runs on', () => {
  const content = (scenario: Scenario) =>
    analyseLoops(scenario, { loops: ['velocity'] })
      .loops.filter(({ remarks }) => remarks.some(({ kind }) => kind === 'content with any force'))
      .map(({ workingPoint }) => workingPoint)
  const teapot = PRESETS[0]!.scenario
  expect(content(teapot)).not.toContain('free')
  expect(content(teapot)).toContain('nominal')
  expect(content(edited(teapot, { 'strategies.sensedForce.velocity.ki': 0 }))).toEqual([])
  const web = WEB_PRESETS[0]!.scenario
  const ramp = { start: 0.1, speed: 0.5, acceleration: 4, jerk: 100 }
  const runs = edited(web, { 'line.ramps': [ramp] })
  expect(analyseLoops(runs, { loops: ['velocity'] }).loops.map(({ workingPoint }) => workingPoint)).toContain('running')
  expect(content(runs)).toContain('nominal')
  expect(content(runs)).not.toContain('running')
})

it('a crossover far below the usual chart is found, drawn and not called missing', () => {
  const slow = edited(BASE, { 'strategies.sensedForce.kp': 1e-9 })
  for (const { crossover, remarks, curves, margins } of analyseLoops(slow, {
    loops: ['force'],
    workingPoints: ['softest', 'stiffest'],
    curves: true,
  }).loops) {
    expect(crossover).toBeGreaterThan(0)
    expect(crossover).toBeLessThan(0.01)
    expect(margins!.bandwidth! / crossover!).toBeCloseTo(1, 2)
    expect(remarks.map(({ kind }) => kind)).not.toContain('no crossover')
    expect(curves!.frequency[0]).toBeLessThan(crossover!)
  }
})

it('a rounded part that has relaxed is stiffer to quick changes by (1 − φ)^(−1/3)', () => {
  // Hertz: force K·e^1.5, tangent 1.5·K^(2/3)·F^(1/3); relaxed it bears F with 1 − φ of its elastic force. Closed form.
  const soft = edited(BASE, {
    'part.exponent': 1.5,
    'part.stiffness': 4e6,
    'part.relaxation.fraction': 0.45,
    'part.relaxation.time': 0.9,
  })
  const { workingPoints } = analyseLoops(soft, { loops: ['force'] })
  const at = (id: string) => workingPoints.find((point) => point.id === id)!.contact as GripContact
  expect(at('relaxed').part / at('stiffest').part).toBeCloseTo(0.55 ** (-1 / 3), 9)
  const { part, pad, slow } = at('relaxed')
  expect(slow).toBeCloseTo(1 / (1 / pad + 1 / (part * 0.55)), 6)
  expect(workingPointsOf(edited(soft, { 'part.exponent': 1, 'part.stiffness': 4e4 }))).not.toContain('relaxed')
})

function read(scenario: Scenario, path: string): number {
  return path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], scenario) as number
}
