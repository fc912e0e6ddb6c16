import { describe, expect, it } from 'vitest'
import {
  type GripEvents,
  type Metrics,
  reasonOf,
  type StrategyId,
  simulateGrip,
  VERDICTS,
  type Verdict,
  wordingOf,
} from '../../../sim/index.ts'
import { verdictOf } from '../../../sim/job/grip/verdict.ts'
import { quick } from '../../grip/scenarios.ts'
import { reasonIn } from '../../say/support.ts'
import { make } from '../../scenario/make.ts'

const NUMBER = String.raw`−?\d[\d.e+]*`
/** An axis without friction that loses its power: the part pushes it back off before the support goes. */
const SPRINGS_BACK = {
  'actuator.kind': 'direct',
  'actuator.transmission.coulomb': 0,
  'actuator.transmission.breakaway': 0,
  'events.powerLoss': { time: 0.15, windings: 'open' },
}
/** A part far too heavy for the jaws, that pulls along the grip from 0.25 s on. */
const SINKING = {
  'jaws.layout': 'anvil',
  'jaws.opening': 0.072,
  'arm.gravity': 'along',
  'arm.lift': 0.25,
  'part.mass': 20,
}
/** A scenario for each verdict, and the sentence that it gives. */
const REACHED: [Verdict, StrategyId, Record<string, unknown>, RegExp][] = [
  ['held', 'current-clamp', {}, /^Holds with # N where # N are needed; # % to spare before it slides\.$/],
  [
    'held',
    'current-clamp',
    { 'part.markForce': 200 },
    /^Holds with # N where # N are needed; # % to spare before it slides, # % before damage\.$/,
  ],
  [
    'slipped',
    'current-clamp',
    { 'part.mass': 7.5, 'run.duration': 0.27, 'arm.lift': 0.25 },
    /^Slides # mm from # s on, with # N where # N hold\.$/,
  ],
  [
    'loose',
    'current-clamp',
    {
      'jaws.layout': 'anvil',
      'jaws.opening': 0.072,
      'arm.gravity': 'none',
      'arm.moves': [{ start: 0.26, axis: 'along', acceleration: 400, duration: 0.1, jerk: 1e5 }],
    },
    /^Comes loose at # s: a contact opens while the part hangs, with # N where # N hold\.$/,
  ],
  [
    'loose',
    'current-clamp',
    { ...SINKING, 'run.duration': 0.251 },
    /^Comes loose: in the end the jaws hold less than what pulls on the part, with # N where # N hold\.$/,
  ],
  [
    'dropped',
    'current-clamp',
    { 'part.mass': 20 },
    /^Lost at # s: slides past the 25 mm pad, with # N where # N hold\.$/,
  ],
  ['marked', 'current-clamp', { 'part.markForce': 10 }, /^Marked at # s: up to # N on a 10 N limit\.$/],
  ['marked', 'current-clamp', { 'part.yieldForce': 10 }, /^Dented at # s: up to # N on a 10 N limit\.$/],
  ['crushed', 'threshold-stop', { 'part.crackForce': 20 }, /^Cracks at # s: # N on a 20 N part\.$/],
  ['missed', 'current-clamp', { 'jaws.stroke': 0.001 }, /^Never touches the part within 0\.400 s\.$/],
  ['missed', 'current-clamp', { 'arm.lift': 0.01 }, /^Never touches the part within 0\.400 s\.$/],
  ['missed', 'current-clamp', SPRINGS_BACK, /^No force on the part when its support goes: it stays behind\.$/],
  [
    'unstable',
    'current-clamp',
    { 'servo.kp': 8e6 },
    /^Leaves its rails at # s: the position loop bangs from limit to limit\.$/,
  ],
]

describe('verdict', () => {
  it.each(REACHED)('%s is reached by %s with %j', (verdict, id, edits, sentence) => {
    const { result } = simulateGrip(quick(edits), id)
    expect(reasonIn(quick(edits), result)).toMatch(new RegExp(sentence.source.replaceAll('#', NUMBER)))
    expect(result.verdict).toBe(verdict)
  })

  it('is loose where momentum alone still closes an axis that yields, as the run ends', () => {
    // A hostile find: 100 kg of jaw on a part of 10 N/m, and an arm that pulls it away ever harder. No force comes near the one needed.
    const scenario = make({
      jaws: { layout: 'anvil', mass: 100, opening: 1.00002 },
      part: { width: 1, mass: 1e-5, stiffness: 10 },
      drive: { busVoltage: 1, currentRate: 10000 },
      servo: { rate: 10000 },
      strategies: { sensedForce: { rate: 10000 } },
      arm: { gravity: 'along', moves: [{ start: 0.0086, axis: 'up', acceleration: -1000 }] },
      run: { duration: 0.0172 },
    })
    const { verdict, metrics } = simulateGrip(scenario, 'current-clamp').result
    expect(metrics.peakForce!).toBeLessThan(metrics.requiredForce! / 1000)
    expect(metrics.holdMargin!).toBeLessThan(-0.99)
    expect(verdict).toBe('loose')
  })

  it('has a scenario for each of its words above', () => {
    expect(new Set(REACHED.map(([verdict]) => verdict))).toEqual(new Set(VERDICTS))
  })

  it('takes the worst that happened: unstable, crushed, missed, dropped, loose, slipped, marked, held', () => {
    const scenario = make({ part: { markForce: 10 } })
    const events: GripEvents = {
      lift: 0.5,
      engaged: 0.1,
      crack: 0.2,
      met: null,
      mark: 0.12,
      slip: 0.55,
      loose: 0.57,
      drop: 0.6,
      release: null,
      unstable: 0.7,
    }
    const metrics = { contactTime: 0.1, peakForce: 20, slipDistance: 0.03 } as Metrics
    const verdict = (some: Partial<GripEvents> = {}, figures: Partial<Metrics> = {}) =>
      verdictOf(scenario, { events: { ...events, ...some }, metrics: { ...metrics, ...figures } })
    expect(verdict()).toBe('unstable')
    const stable = { unstable: null }
    expect(verdict(stable)).toBe('crushed')
    expect(verdict({ ...stable, lift: null })).toBe('crushed') // a broken part that stays behind is broken all the same
    const whole = { ...stable, crack: null }
    expect(verdict({ ...whole, lift: null })).toBe('missed')
    expect(verdict(whole, { contactTime: null })).toBe('missed')
    expect(verdict(whole)).toBe('dropped')
    expect(verdict({ ...whole, drop: null })).toBe('loose')
    const kept = { ...whole, drop: null, loose: null }
    expect(verdict(kept)).toBe('slipped')
    expect(verdict({ ...kept, slip: null }, { holdMargin: -1e-9 })).toBe('loose')
    expect(verdict({ ...kept, slip: null })).toBe('marked')
    expect(verdict({ ...kept, slip: null }, { peakForce: 10 })).toBe('held')
  })

  it('of a part that nothing bears is loose, however soon the run ends or the jaws open, though no contact has opened by then', () => {
    const result = (edits: Record<string, unknown>) =>
      simulateGrip(quick({ ...SINKING, ...edits }), 'current-clamp').result
    for (const edits of [
      { 'run.duration': 0.2501 },
      { 'run.duration': 0.251 },
      { 'events.release': { time: 0.251 } },
    ]) {
      const { verdict, events, metrics } = result(edits)
      expect(verdict).toBe('loose')
      expect(events.loose).toBeNull()
      expect(metrics.holdMargin).toBeLessThan(0)
    }
    expect(result({}).events.loose).not.toBeNull()
    expect(result({ 'run.duration': 0.251, 'part.mass': 1 }).verdict).toBe('held')
  })

  it('is not marked by the force that it takes, and is by the least more', () => {
    const limit = simulateGrip(quick(), 'current-clamp').result.metrics.peakForce!
    const at = (markForce: number) =>
      simulateGrip(quick({ 'part.markForce': markForce }), 'current-clamp').result.verdict
    expect(at(limit)).toBe('held')
    expect(at(limit * (1 - 1e-9))).toBe('marked')
  })

  it('warns of a winding above its limit, whatever the verdict', () => {
    const hot = quick({ 'actuator.motor.thermal.limit': 25.05 })
    expect(reasonIn(hot, simulateGrip(hot, 'current-clamp').result)).toMatch(
      /\. The winding reaches [\d.]+ °C, its limit is 25\.\d °C\.$/,
    )
  })

  it('is worded in the units of whoever asks', () => {
    const scenario = quick({ 'part.markForce': 10 })
    const { result } = simulateGrip(scenario, 'current-clamp')
    expect(reasonOf(scenario, result, wordingOf('us'))).toMatch(
      /^Marked at 0\.\d{4}\ss: up to [\d.]+\slbf on a 2\.25\slbf limit\.$/,
    )
  })
})
