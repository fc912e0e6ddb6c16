import { describe, expect, it } from 'vitest'
import { explain, PRESETS, type Scenario, type StrategyId, simulateGrip, whySentence } from '../../sim/index.ts'
import { SI, whyIn } from '../say/support.ts'
import { quick } from './scenarios.ts'

const tell = (scenario: Scenario, strategy: StrategyId = 'current-clamp') => {
  const why = explain(scenario, strategy, simulateGrip(scenario, strategy).result.verdict)
  return { ...why, sentence: whyIn(scenario, strategy, why) }
}
const teapot = PRESETS[0]!.scenario

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

  it('is said in the words of the page', () => {
    const why = tell(teapot)
    const words = { ...SI, force: (newtons: number) => `${Math.round(newtons)} units` }
    expect(whySentence(teapot, 'current-clamp', why, words)).toMatch(
      /^The part sees at most 58 units and takes 65 units\./,
    )
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
      { 'strategies.sensedForce.sensor.offset': 30 },
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

describe('a counter-run that gives no force', () => {
  const sum = (causes: { force: number }[]) => causes.reduce((total, { force }) => total + force, 0)

  it('is tried again after the others: the noise of a coarse encoder trips a stop that is not delayed', () => {
    const noisy = quick({
      'servo.encoderResolution': 2e-5,
      'strategies.thresholdStop.threshold': 0.8,
      'strategies.thresholdStop.confirmTime': 0.004,
      'strategies.thresholdStop.filter': 0.003,
    })
    const why = tell(noisy, 'threshold-stop')
    const causes = why.causes.map(({ cause }) => cause)
    expect(why.untold).toEqual([])
    expect(causes.indexOf('detection')).toBeGreaterThan(causes.indexOf('measuring'))
    expect(sum(why.causes)).toBeCloseTo(why.force!, 9)
  })

  it('leaves its cause in what is left, and says so: without friction a poorly damped loop is unstable', () => {
    const why = tell(quick({ 'servo.kd': 1 }))
    expect(why.untold).toEqual([{ cause: 'friction', label: expect.any(String), verdict: 'unstable' }])
    expect(why.causes.map(({ cause }) => cause)).not.toContain('friction')
    expect(sum(why.causes)).toBeCloseTo(why.force!, 9)
  })
})
