/** Every verdict on a joint, reached by a run, with its sentence; force over depth against the closed form; laws of a run. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Edit, editScenario, type Scenario, STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import { jointPressure } from '../../../sim/job/press/fill.ts'
import type { PressJudgement, PressResult, PressVerdict } from '../../../sim/job/press/result.ts'
import { jointOf, neededForce, slidingForce } from '../../../sim/job/press/window.ts'
import { PRESS_PRESETS } from '../../../sim/others.ts'
import { simulate } from '../../../sim/run/simulate.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { reasonOf } from '../../../sim/say/reason.ts'
import { wordingOf } from '../../../sim/say/wording.ts'
import { pressOf, run50 } from './support.ts'

const [arm, hinge] = PRESS_PRESETS.map(({ scenario }) => editedBy(scenario, { 'run.cycle': null })) as [
  Scenario,
  Scenario,
]

function editedBy(scenario: Scenario, edits: Record<string, unknown>): Scenario {
  const list: Edit[] = Object.entries(edits).map(([path, value]) => ({ path, value }))
  const checked = editScenario(scenario, list)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

const run = (scenario: Scenario, id: StrategyId = 'current-clamp') => simulate<PressJudgement>(scenario, id).result
const said = (scenario: Scenario, result: PressResult) =>
  inPlainSpaces(reasonOf(scenario, { ...result, overloads: [], requirements: [] }, wordingOf('si')))

const CASES: [
  verdict: PressVerdict,
  what: string,
  base: Scenario,
  edits: Record<string, unknown>,
  id: StrategyId,
  said: RegExp,
][] = [
  [
    'seated',
    'as set',
    arm,
    {},
    'current-clamp',
    /^Seated at 12\.2 mm, pressed onto the shoulder with \d+ N; [\d.]+ % to spare in the band, [\d.]+ % before the limit\.$/,
  ],
  [
    'short',
    'by a clamp that does not carry it',
    arm,
    { 'strategies.currentClamp.limit': 7 },
    'current-clamp',
    /^Ends at [\d.]+ mm where 12\.2 mm are needed, with at most \d+ N from the ram\.$/,
  ],
  [
    'short',
    'by a clamp that does not seat it',
    arm,
    { 'strategies.currentClamp.limit': 9.5 },
    'current-clamp',
    /^Pressed onto the shoulder with \d+ N where 1900 N are needed\.$/,
  ],
  [
    'short',
    'deep enough, but on its way by sticking and slipping as the run ends',
    hinge,
    { 'run.duration': 1.2 },
    'threshold-stop',
    /^Still on its way as the run ends, 5\.9\d mm deep: where it would stand is not known\.$/,
  ],
  [
    'short',
    'deep enough, but slowly pressed on by a drive that is not done',
    run50({
      approach: { creepSpeed: 5e-5, creepFrom: 0.0001 },
      window: { depth: { least: 0.03 } },
      run: { duration: 5, step: 2.5e-5 },
    }),
    {},
    'current-clamp',
    /^Still on its way as the run ends, 30(\.\d+)? mm deep: where it would stand is not known\.$/,
  ],
  [
    'slack',
    'with half the interference',
    arm,
    { 'bushing.interference': 4e-6 },
    'current-clamp',
    /^Below the band at [\d.]+ mm: less force than a joint that holds should take there\. Its pressure is 12 MPa\.$/,
  ],
  [
    'tilted',
    'held askew',
    arm,
    { 'bushing.tilt': 0.006 },
    'current-clamp',
    /^Above the band at [\d.]+ mm for the tilt alone: up to \d+ N come from ends that press on opposite sides\.$/,
  ],
  [
    'forced',
    'with too much friction',
    arm,
    { 'joint.friction.static': 0.3, 'joint.friction.pressing': 0.25 },
    'current-clamp',
    /^Above the band at [\d.]+ mm, straight as it stands\.$/,
  ],
  [
    'forced',
    'beyond the limit of the bushing',
    arm,
    { 'bushing.mostForce': 2000 },
    'current-clamp',
    /^Forced at 12\.2 mm: up to \d+ N on the bushing’s limit of 2000 N\.$/,
  ],
  [
    'forced',
    'onto its shoulder',
    arm,
    { 'window.seat.most': 2000 },
    'current-clamp',
    /^Forced onto its shoulder: \d+ N where 2000 N are allowed\.$/,
  ],
  [
    'forced',
    'too deep by force alone',
    hinge,
    { 'run.duration': 6 },
    'sensed-force',
    /^Driven too deep: [\d.]+ mm where 6\.2 mm are allowed\.$/,
  ],
  [
    'missed',
    'behind the end of its way',
    hinge,
    { 'ram.gap': 0.039, 'run.duration': 0.5 },
    'current-clamp',
    /^Never touches the bushing within 0\.500 s\.$/,
  ],
  ['unstable', 'at a gain far too high', arm, { 'servo.kd': 20_000 }, 'threshold-stop', /^Leaves its rails at /],
]

describe('a joint', () => {
  it.each(CASES)('is %s, %s', (verdict, _, base, edits, id, sentence) => {
    const scenario = editedBy(base, edits)
    const result = run(scenario, id)
    expect(said(scenario, result)).toMatch(sentence)
    expect(result.verdict).toBe(verdict)
  })

  it('is seated at the same depth by force whatever the ram reads, and by depth only as deep as the frame lets it', () => {
    const soft = (base: Scenario) => editedBy(base, { 'ram.stiffness': 2e6 })
    expect(run(arm).metrics.depth! - run(soft(arm)).metrics.depth!).toBeLessThan(1e-5)
    const [stiff, given] = [run(hinge), run(soft(hinge))]
    const lost = stiff.metrics.depth! - given.metrics.depth!
    // Closed form: the bushing is behind the ram by force over stiffness.
    for (const { metrics } of [stiff, given])
      expect(Math.abs(metrics.ramTravel! - 0.008 - metrics.depth! - metrics.springBack!)).toBeLessThan(1e-6)
    expect(lost).toBeGreaterThan(4e-5)
    expect(run(editedBy(hinge, { 'ram.stiffness': 1e6 })).verdict).toBe('short')
  })

  it('takes the force of the closed form at every depth, cone included', () => {
    const scenario = run50({ approach: { speed: 0.02 }, run: { duration: 3 }, bushing: { chamfer: { angle: 0.05 } } })
    const { traces } = simulate<PressJudgement>(scenario, 'threshold-stop')
    const { depth, jointForce } = traces as unknown as Record<string, Float64Array>
    const joint = jointOf(scenario)
    for (const wanted of [0.5 * joint.entry, joint.entry, 0.002, 0.01, 0.03]) {
      const at = depth!.findIndex((value) => value >= wanted)
      expect(Math.abs(jointForce![at]! / slidingForce(scenario, depth![at]!) - 1)).toBeLessThan(0.01)
    }
  })

  it('without friction stores what is pressed into it, ½·p·δ over the pressed face (balance of energy)', () => {
    const scenario = run50({ joint: { friction: { pressing: 0, static: 0 } }, approach: { overtravel: 0.03 } })
    const { metrics } = run(scenario, 'threshold-stop')
    const joint = jointOf(scenario)
    const face = joint.circumference * (joint.engaged(metrics.depth!) + joint.entry / 3)
    const stored = 0.5 * jointPressure(scenario) * joint.overlap * face
    expect(Math.abs(metrics.work! / stored - 1)).toBeLessThan(0.02) // the ram’s last swing on its frame
  })

  it('held askew presses as an integral over two opposite lines does', () => {
    const joint = jointOf(run50({ bushing: { tilt: 0.003 } }))
    const engaged = 0.04
    const steps = 20_000
    let sum = 0
    for (let n = 0; n < steps; n++) {
      const y = ((n + 0.5) / steps - 0.5) * engaged
      sum += Math.max(0, joint.overlap + 0.003 * y) + Math.max(0, joint.overlap - 0.003 * y)
    }
    const whole = (sum / (2 * steps)) * engaged * joint.pressure * joint.circumference
    expect((joint.straight(engaged) + joint.askew(engaged)) / whole).toBeCloseTo(1, 6)
    expect(jointOf(run50({ bushing: { tilt: 0.0009 } })).askew(engaged)).toBe(0) // its ends do not lift off: 0.9 mrad · 20 mm < 20 µm
  })

  it('sticks and slips where friction at rest is far higher and the ram slow and soft, and does not where it is not', () => {
    const sticky = (rest: number) =>
      run50({
        joint: { friction: { pressing: 0.1, static: rest }, slideSpeed: 0.002 },
        ram: { stiffness: 2e7, damping: 300 },
        approach: { speed: 0.002, overtravel: 0.004 },
        run: { duration: 4 },
      })
    const drops = (scenario: Scenario) => {
      const { force } = simulate<PressJudgement>(scenario, 'threshold-stop').traces
      let [peak, most] = [0, 0]
      for (const value of force) {
        peak = Math.max(peak, value)
        most = Math.max(most, peak - value)
      }
      return most
    }
    expect(drops(sticky(0.25))).toBeGreaterThan(20 * Math.max(1, drops(sticky(0.1))))
  })

  it('needs the force that slides it to its depth, and then what seats it', () => {
    expect(neededForce(arm)).toBe(1900)
    expect(neededForce(hinge)).toBe(slidingForce(hinge, 0.0059))
  })
})

describe('laws of any press', () => {
  const drawn = fc.record({
    'bushing.interference': fc.double({ min: -5e-6, max: 2e-5, noNaN: true }),
    'bushing.tilt': fc.double({ min: 0, max: 0.01, noNaN: true }),
    'joint.friction.static': fc.double({ min: 0.11, max: 0.4, noNaN: true }),
    'ram.stiffness': fc.integer({ min: 2e6, max: 6e7 }),
    'approach.speed': fc.double({ min: 0.02, max: 0.06, noNaN: true }),
    'strategies.currentClamp.limit': fc.double({ min: 4, max: 16, noNaN: true }),
  })
  const short = editedBy(arm, { 'run.duration': 1.2, 'approach.acceleration': 3, 'approach.jerk': 100 })

  it('window and verdict agree, forces are never negative, the ram’s work is no less than the joint’s', () => {
    fc.assert(
      fc.property(drawn, fc.constantFrom(...STRATEGIES.map(({ id }) => id)), (edits, id) => {
        const scenario = editedBy(short, edits)
        const { result, traces } = simulate<PressJudgement>(scenario, id)
        const { metrics, events } = result
        if (result.verdict === 'unstable') return
        const columns = traces as unknown as Record<string, Float64Array>
        for (const name of ['force', 'depth', 'shoulderForce'])
          for (const value of columns[name]!) expect(value).toBeGreaterThanOrEqual(name === 'depth' ? -1e-6 : 0)
        if (result.verdict === 'seated') {
          expect(metrics.bandMargin ?? 0).toBeGreaterThanOrEqual(0)
          expect(metrics.forceMargin!).toBeGreaterThanOrEqual(0)
          expect(metrics.seatForce!).toBeGreaterThanOrEqual(1900)
          expect(metrics.depth!).toBeGreaterThanOrEqual(0.01215)
        }
        if ((metrics.bandMargin ?? 1) < 0) expect(events.below !== null || events.above !== null).toBe(true)
        expect(said(scenario, result)).toMatch(/^[A-Z].+\.$/)
        expect(said(scenario, result)).not.toMatch(/NaN|Infinity|undefined|null/)
      }),
      { numRuns: 12, endOnFailure: true },
    )
  })

  it('more interference never takes less force', () => {
    let before = -1
    for (const interference of [-2e-6, 0, 2e-6, 5e-6, 1e-5, 1.5e-5]) {
      const force = slidingForce(pressOf({ bushing: { interference } }), 0.006)
      expect(force).toBeGreaterThanOrEqual(before)
      before = force
    }
  })
})
