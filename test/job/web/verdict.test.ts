/** What becomes of a web: each verdict in a run, what is said of it, and laws of any web. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { core } from '../../../sim/cli/core.ts'
import { editScenario, type Scenario } from '../../../sim/index.ts'
import type { WebJudgement, WebResult } from '../../../sim/job/web/result.ts'
import { WEB_PRESETS } from '../../../sim/others.ts'
import { simulate } from '../../../sim/run/simulate.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { reasonOf } from '../../../sim/say/reason.ts'
import { wordingOf } from '../../../sim/say/wording.ts'
import { meanBetween } from './support.ts'

const [paper, film] = WEB_PRESETS.map(({ scenario }) => scenario) as [Scenario, Scenario]

function editedBy(scenario: Scenario, edits: Record<string, unknown>): Scenario {
  const checked = editScenario(
    scenario,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

type Id = 'current-clamp' | 'sensed-force'
const run = (scenario: Scenario, id: Id = 'current-clamp') => simulate<WebJudgement>(scenario, id, { core })
const said = (scenario: Scenario, result: WebResult) => inPlainSpaces(reasonOf(scenario, result, wordingOf('si')))

function told(edits: Record<string, unknown>, id: Id = 'current-clamp', base = film) {
  const scenario = editedBy(base, edits)
  const { result } = run(scenario, id)
  return { ...result, said: said(scenario, result) }
}

describe('verdicts', () => {
  it.each([paper, film])('the presets are taut by either strategy', (scenario) => {
    for (const id of ['current-clamp', 'sensed-force'] as const) {
      const { result } = run(scenario, id)
      expect(result.verdict).toBe('taut')
      expect(result.overloads).toEqual([])
      expect(said(scenario, result)).toMatch(
        /^Taut from [\d.]+ s on: never less than [\d.]+ N where \d+ N are needed, /,
      )
    }
  })

  it('slack where nothing makes up for the inertia of a heavy roll', () => {
    const up = [{ start: 1.5, speed: 0.6, acceleration: 1, jerk: 5 }]
    const heavy = { 'roll.inertia': 0.008, 'follow.inertia': 0, 'line.ramps': up }
    const bare = told(heavy)
    expect(bare.verdict).toBe('slack')
    expect(bare.said).toMatch(/^Slack at [\d.]+ s: down to [\d.]+ N where 12 N are needed\.$/)
    // J·a/R², with motor and idlers.
    const lost = (0.008 + 0.00015 * 0.9 + 1e-4) / 0.03 ** 2
    const during = (inertia: number) =>
      meanBetween(run(editedBy(film, { ...heavy, 'follow.inertia': inertia })).traces, 'tension', 1.85, 2.1)
    expect(Math.abs((during(1) - during(0)) / lost - 1)).toBeLessThan(0.03) // two and a half swings of roll on web
    expect(told({ ...heavy, 'follow.inertia': 1 }).verdict).toBe('taut')
  })

  it('slack where the roll grows and the drive does not know', () => {
    const thick = { 'web.thickness': 7e-4, 'web.modulus': 4e8, 'window.least': 55 }
    expect(told({ ...thick, 'follow.radius': 'start' }, 'current-clamp', paper).verdict).toBe('slack')
    expect(told({ ...thick, 'follow.radius': 'wound' }, 'current-clamp', paper).verdict).toBe('taut')
  })

  it('slack by the time that counts, never as taut, never taut at all', () => {
    expect(told({ 'window.from': 0.8 }).said).toMatch(/^Slack at 0\.800 s: down to [\d.]+ N/)
    expect(told({ 'strategies.currentClamp.limit': 0.8 }).said).toMatch(/^Never as taut as 12 N: at most [\d.]+ N\.$/)
    const never = told({ 'web.slack': 5, 'run.duration': 5 })
    expect(never).toMatchObject({ verdict: 'slack', metrics: { contactTime: null, mostTension: null } })
    expect(never.said).toBe('Never drawn taut within 5.00 s.')
    expect(told({ 'events.powerLoss': { time: 2, windings: 'open' } }).said).toMatch(
      /^Slack at 2\.\d+ s: at [\d.]+ s the web has no tension at all, where 12 N are needed\.$/,
    )
  })

  it('stretched by a fast take-up, also before the time that counts', () => {
    const fast = told({
      'approach.speed': 8,
      'approach.acceleration': 200,
      'approach.jerk': 20_000,
      'approach.creepFrom': 0,
    })
    expect(fast.verdict).toBe('stretched')
    expect(fast.said).toMatch(/^Stretched at [\d.]+ s: up to [\d.]+ N where 25 N are allowed\.$/)
    expect(fast.events.over!).toBeLessThan(1.2)
  })

  it('torn, and carries nothing from then on', () => {
    const scenario = editedBy(film, { 'web.breakTension': 15 })
    const { result, traces } = run(scenario)
    expect(result.verdict).toBe('torn')
    expect(said(scenario, result)).toMatch(/^Torn at [\d.]+ s: 15 N on a web that tears at 15 N\.$/)
    const { tension } = traces as unknown as Record<string, Float64Array>
    traces.time.forEach((time, n) => {
      if (time > result.events.torn! + 0.001) expect(tension![n]).toBe(0)
    })
    // The roll runs ahead by the lead of the reference and then keeps the line’s speed: at the end both stand.
    const { speed, lineSpeed } = traces as unknown as Record<string, Float64Array>
    expect(Math.abs(speed!.at(-1)!)).toBeLessThan(0.5)
    expect(lineSpeed!.at(-1)).toBe(0)
  })

  it('unstable where its loop is', () => {
    const { verdict } = told({ 'strategies.sensedForce.velocity.kp': 60 }, 'sensed-force')
    expect(verdict).toBe('unstable')
  })

  it('a threshold stop is refused', () => {
    expect(() => simulate(film, 'threshold-stop')).toThrow(/given "threshold-stop" on the job "web", allowed/)
  })
})

describe('laws of any web', () => {
  const short = editedBy(film, {
    'run.duration': 2.2,
    'line.ramps': [{ start: 1.5, speed: 0.5, acceleration: 2, jerk: 20 }],
  })
  const drawn = fc.record({
    'web.modulus': fc.double({ min: 1e9, max: 9e9, noNaN: true }),
    'idlers.breakaway': fc.double({ min: 0.3, max: 2, noNaN: true }),
    'roll.runout': fc.double({ min: 0, max: 3e-4, noNaN: true }),
    'strategies.currentClamp.limit': fc.double({ min: 0.5, max: 3, noNaN: true }),
    'strategies.sensedForce.target': fc.double({ min: 5, max: 30, noNaN: true }),
    'follow.inertia': fc.double({ min: 0, max: 1, noNaN: true }),
  })

  it('window and verdict agree, and no tension is negative', () => {
    fc.assert(
      fc.property(drawn, fc.constantFrom('current-clamp' as const, 'sensed-force' as const), (edits, id) => {
        const scenario = editedBy(short, edits)
        const { result, traces } = run(scenario, id)
        const { metrics } = result
        if (result.verdict === 'unstable') return
        for (const value of (traces as unknown as Record<string, Float64Array>).tension!)
          expect(value).toBeGreaterThanOrEqual(0)
        expect((metrics.slackMargin ?? -1) >= 0 && metrics.stretchMargin! >= 0).toBe(result.verdict === 'taut')
        expect(said(scenario, result)).toMatch(/^[A-Z].+\.$/)
      }),
      { numRuns: 12, endOnFailure: true },
    )
  })

  it('the wider web at the wider tension is the same web (a law of scale)', () => {
    const twice = editedBy(short, {
      'web.width': 0.6,
      'web.damping': 0.002,
      'idlers.coulomb': 0.6,
      'idlers.breakaway': 0.8,
      'idlers.viscous': 0.1,
      'idlers.stiffness': 40_000,
      'idlers.mass': 0.3,
      'span.entryTension': 8,
      'roll.inertia': 0.0018,
      'window.least': 24,
      'window.most': 50,
      'actuator.motor.torqueConstant': 0.6,
      'actuator.motor.inertia': 16e-5,
      'actuator.transmission.inertia': 4e-5,
      'actuator.transmission.coulomb': 0.03,
      'actuator.transmission.breakaway': 0.04,
      'actuator.transmission.viscous': 0.001,
      'actuator.transmission.bristleStiffness': 80,
      'actuator.transmission.stiffness': 1600,
      'actuator.transmission.damping': 0.1,
      'actuator.motor.cogging.amplitude': 0.008,
      'actuator.motor.resistance': 7.2,
      'actuator.motor.inductance': 0.014,
      'drive.busVoltage': 96,
    })
    // Twice the torque for the same current: every tension doubles, as nothing in the laws knows its size.
    const quiet = { 'drive.currentNoise': 0, 'drive.currentResolution': 0 }
    const a = run(editedBy(short, quiet)).result.metrics
    const b = run(editedBy(twice, quiet)).result.metrics
    expect(b.meanTension! / a.meanTension! / 2).toBeCloseTo(1, 3)
    expect(b.mostTension! / a.mostTension! / 2).toBeCloseTo(1, 3)
  })
})
