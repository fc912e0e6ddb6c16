import { describe, expect, it } from 'vitest'
import { removalsOf } from '../../sim/ask/counter-runs.ts'
import { type Runner, runHere } from '../../sim/ask/runner.ts'
import { run as compiled } from '../../sim/cli/core.ts'
import {
  explain,
  PRESETS,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  type Traces,
  whySentence,
} from '../../sim/index.ts'
import { JOBS } from '../../sim/job/index.ts'
import { explained } from '../grip/remembered.ts'
import { quick } from '../grip/scenarios.ts'
import { SI, whyIn } from '../say/support.ts'
import { make } from '../scenario/make.ts'

const tell = (scenario: Scenario, strategy: StrategyId = 'current-clamp') => {
  const why = explained(scenario, strategy)
  return { ...why, sentence: whyIn(scenario, why) }
}
const teapot = PRESETS[0]!.scenario
const REMOVALS = removalsOf(JOBS.grip)

describe('the sentence', () => {
  it('of a held part says what it sees, takes, and what the setting means', () => {
    const why = tell(teapot)
    expect(why).toMatchObject({ verdict: 'held', figure: 'peak', bound: teapot.part.crackForce, run: null })
    expect(why.sentence).toMatch(
      /^The part sees at most [\d.]+ N and takes 65 N\. The setting means [\d.]+ N; momentum of the approach adds [\d.]+ N\.$/,
    )
  })

  it('of a crushed part says how far the force would have gone', () => {
    const why = tell(teapot, 'threshold-stop')
    expect(why.verdict).toBe('crushed')
    expect(why.force!).toBeGreaterThan(teapot.part.crackForce!)
    expect(why.sentence).toMatch(/^The part breaks at 65 N; one that did not break would see [\d.]+ N\. /)
  })

  it('of a marked and of a dented part', () => {
    expect(tell(quick({ 'part.markForce': 5 })).sentence).toMatch(/^The part sees [\d.]+ N and is marked above 5 N\. /)
    expect(tell(quick({ 'part.yieldForce': 5 })).sentence).toMatch(
      /^The part gives way at 5 N; one that did not would see [\d.]+ N\. /,
    )
  })

  it('of a part that slides says what is left and what is needed', () => {
    const weak = quick({ 'strategies.currentClamp.limit': 0.3, 'part.mass': 2 })
    const why = tell(weak)
    expect(why).toMatchObject({ figure: 'hold' })
    expect(why.force!).toBeLessThan(why.bound!)
    expect(why.sentence).toMatch(
      /^The grip is left with [\d.]+ N at its weakest, where the hardest moment needs [\d.]+ N\. The setting itself means only [\d.]+ N\.$/,
    )
  })

  it('of a grip that does what it is set to', () => {
    expect(tell(PRESETS[0]!.scenario, 'sensed-force').sentence).toContain('That is about what the setting means, 40 N.')
  })

  it('says of a small cause, too, whether it adds or takes', () => {
    const why = tell(teapot)
    const [setting, cause] = why.causes
    const told = (force: number) => {
      const causes = [
        { ...setting!, force: 1.5 },
        { ...cause!, label: 'Dead band', force },
      ]
      return whySentence(teapot, { ...why, force: 2, causes }, SI)
    }
    expect(told(0.5)).toMatch(/dead band adds 0\.5\sN\.$/)
    expect(told(-0.5)).toMatch(/dead band takes 0\.5\sN\.$/)
  })

  it('is said in the words of the page', () => {
    const why = tell(teapot)
    const words = { ...SI, force: (newtons: number) => `${Math.round(newtons)} units` }
    expect(whySentence(teapot, why, words)).toMatch(/^The part sees at most 58 units and takes 65 units\./)
  })
})

describe('where there is no force to take apart, the sentence says why', () => {
  it.each<[string, Record<string, unknown>, StrategyId, string]>([
    ['the approach is too slow', { 'approach.speed': 0.002 }, 'current-clamp', 'The approach takes '],
    [
      'the stroke is too short',
      { 'jaws.stroke': 0.001 },
      'current-clamp',
      'The stroke of a jaw ends 1 mm before the part.',
    ],
    [
      'the threshold is passed on the way',
      { 'strategies.thresholdStop.threshold': 0.01 },
      'threshold-stop',
      'the effort of the move is taken for contact, and the jaws stop',
    ],
    [
      'the gauge reads contact in free air',
      { 'sensors.gauge.offset': 30 },
      'sensed-force',
      'the gauge’s reading is taken for contact, and the jaws stop',
    ],
    ['the clamp is too weak', { 'strategies.currentClamp.limit': 0.01 }, 'current-clamp', 'does not carry the jaws'],
    [
      'the motor is too weak',
      { 'drive.busVoltage': 0.5, 'servo.currentLimit': 0.02 },
      'threshold-stop',
      'does not follow its profile',
    ],
    [
      'the jaws come after the lift',
      { 'approach.speed': 0.006, 'arm.lift': 0.1 },
      'current-clamp',
      's to the part, and the support goes at 0.100 s.',
    ],
  ])('%s', (_, edits, strategy, words) => {
    const why = tell(quick(edits), strategy)
    expect(why).toMatchObject({ verdict: 'missed', force: null, bound: null, causes: [], untold: [] })
    expect(why.sentence).toContain(words)
  })

  it('a run that leaves its rails', () => {
    const why = tell(quick({ 'servo.kp': 2e6 }))
    expect(why).toMatchObject({ verdict: 'unstable', force: null, causes: [] })
    expect(why.sentence).toMatch(/^Leaves its rails at .*An unstable grip has no force that could be taken apart/)
  })
})

const sum = (causes: { force: number }[]) => causes.reduce((total, { force }) => total + force, 0)
const UNLOSABLE = { 'jaws.padLength': 1, 'jaws.friction.static': 3, 'jaws.friction.sliding': 3 }

describe('a counter-run that gives no force', () => {
  const noisy = quick({
    'sensors.encoder.resolution': 2e-5,
    'strategies.thresholdStop.threshold': 0.8,
    'strategies.thresholdStop.confirmTime': 0.004,
    'strategies.thresholdStop.filter': 0.003,
  })

  it('waits for the others: the noise of a coarse encoder trips a stop that is not delayed', () => {
    const why = tell(noisy, 'threshold-stop')
    const detection = why.causes.find(({ cause }) => cause === 'detection')!
    expect(why.untold).toEqual([])
    expect(detection.alone).toBeNull()
    expect(detection.last).not.toBeNull()
    expect(sum(why.causes)).toBeCloseTo(why.force!, 9)
  })

  it('leaves its cause in what is left, and says so: without friction a poorly damped loop is unstable', () => {
    const why = tell(quick({ 'servo.kd': 1 }))
    expect(why.untold).toEqual([{ cause: 'friction', label: expect.any(String), verdict: 'unstable' }])
    expect(why.causes.map(({ cause }) => cause)).not.toContain('friction')
    expect(sum(why.causes)).toBeCloseTo(why.force!, 9)
  })
})

describe('a cause is one cause', () => {
  it('a gauge that lags behind nothing leaves the filter on the derivative of the force as it was', () => {
    const damped = quick({ 'strategies.sensedForce.kd': 2e-6, 'sensors.gauge.bandwidth': 400 })
    const { edits } = REMOVALS.find(({ cause }) => cause === 'detection')!
    const without = make(
      damped,
      Object.fromEntries(edits(damped, 'sensed-force').map(({ path, value }) => [path, value])),
    )
    expect(without.sensors.gauge.bandwidth).toBeGreaterThanOrEqual(1e6)
    expect(without.strategies.sensedForce.derivativeFilter).toBe(1 / 400)
  })

  it('no two take away the same, but for what hangs together in time or is converted anew', () => {
    // Momentum shifts what comes later and touches slowly, friction converts the setting, a stop presses with the clamp.
    const shared = /^(run|arm|events|approach)\b|currentClamp\.limit$|threshold$/
    for (const { id } of STRATEGIES) {
      const paths = REMOVALS.flatMap(({ edits }) => edits(teapot, id).map(({ path }) => path))
      const twice = paths.filter((path, n) => paths.indexOf(path) !== n && !shared.test(path))
      expect(twice).toEqual([])
    }
  })
})

describe('the forces of the causes', () => {
  const quickGrip = quick({ 'part.relaxation.fraction': 0.2 })

  it('do not depend on the order in which the causes are listed, to the last bit, whatever the grip', () => {
    // A made-up simulator: a force for each scenario, from its text.
    const made: Runner = (scenario: Scenario) => {
      const text = JSON.stringify(scenario)
      let peakForce = 7
      for (let k = 0; k < text.length; k++) peakForce = (peakForce * 31 + text.charCodeAt(k)) % 9973
      const result = { verdict: 'held', metrics: { peakForce } }
      return { result, weakest: null, traces: null } as unknown as ReturnType<typeof runHere> & { traces: Traces }
    }
    for (const { id } of STRATEGIES) {
      const causes = (removals: typeof REMOVALS) => explain(quickGrip, id, 'held', made, removals).causes
      expect(causes(REMOVALS).length).toBeGreaterThan(5)
      expect(causes([...REMOVALS].reverse())).toEqual(causes(REMOVALS))
    }
  })

  it('are means of counter-runs that are made here by hand: two causes in both orders', () => {
    const two = REMOVALS.filter(({ cause }) => cause === 'windup' || cause === 'stopping')
    const why = explain(quickGrip, 'threshold-stop', 'held', runHere, two)
    const peak = (edits: Record<string, unknown>) =>
      compiled(make(quickGrip, { ...UNLOSABLE, ...edits }), 'threshold-stop').result.metrics.peakForce!
    const windup = { 'servo.ki': 0 }
    const { threshold } = quickGrip.strategies.thresholdStop
    const stopping = {
      'strategies.thresholdStop.afterwards': 'press',
      'strategies.currentClamp.limit': threshold,
    }
    const [full, noWindup, noStopping, bare] = [{}, windup, stopping, { ...windup, ...stopping }].map(peak)
    expect(why.causes.find(({ cause }) => cause === 'windup')).toMatchObject({
      force: expect.closeTo((full! - noWindup! + noStopping! - bare!) / 2, 9),
      alone: full! - noWindup!,
      last: noStopping! - bare!,
    })
    expect(why.causes.find(({ cause }) => cause === 'stopping')).toMatchObject({
      alone: full! - noStopping!,
      last: noWindup! - bare!,
    })
    expect(sum(why.causes)).toBeCloseTo(why.force!, 9)
  })

  it('ask for each combination of the causes that act once', () => {
    const seen: string[] = []
    const run: Runner = (scenario: Scenario, strategy: StrategyId) => {
      seen.push(JSON.stringify(scenario))
      return runHere(scenario, strategy, { traces: true })
    }
    const why = explain(quickGrip, 'threshold-stop', 'held', run)
    expect(new Set(seen).size).toBe(seen.length)
    const acting = why.causes.length - 2
    expect(acting).toBeGreaterThan(2)
    expect(seen.length).toBeLessThanOrEqual(2 ** acting + 2 * REMOVALS.length)
  })
})
