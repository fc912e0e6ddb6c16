import { describe, expect, it } from 'vitest'
import type { Miss } from '../../sim/ask/tune-judge.ts'
import { fitnessWhy, inPlainSpaces, limitWords, loopNote, missWhy, missWords } from '../../sim/index.ts'
import type { EnteredLoops } from '../../sim/loops/drive/sheet.ts'
import type { DryFriction, LoopRemark } from '../../sim/loops/remarks.ts'
import { enteredWords, remarkOn, resolutionWords } from '../../sim/say/drive.ts'
import { frictionNote, missingLoops } from '../../sim/say/loops.ts'
import type { Ground } from '../../sim/strategy/strategy.ts'
import { SI } from './support.ts'

describe('a remark on a loop', () => {
  it.each<[LoopRemark, string]>([
    [
      { kind: 'unstable', outside: 2, of: 5, swing: 2 * Math.PI * 40, doubling: 0.0123 },
      'Unstable: 2 of 5 poles lie outside the unit circle; the fastest growing one swings at 251 rad/s (40 Hz) and doubles every 12.3 ms. No margin exists.',
    ],
    [
      { kind: 'on the border', swing: 2 * Math.PI * 40 },
      'On the border of stability: a swing of 251 rad/s (40 Hz) neither grows nor dies away, and no margin exists.',
    ],
    [
      { kind: 'on the border', swing: 0 },
      'On the border of stability: what is once disturbed stays, neither growing nor dying away, and no margin exists.',
    ],
    [
      { kind: 'by itself', stability: 'stable' },
      'With the servo’s command held, the current loop by itself is stable.',
    ],
    [
      { kind: 'by itself', stability: 'unstable' },
      'Nor is the current loop stable by itself, with the servo’s command held.',
    ],
    [
      { kind: 'no crossover', bandwidth: true },
      'No crossover: the loop gain does not fall through 1 at any frequency, so the loop has no phase margin.',
    ],
    [
      { kind: 'no bandwidth', closed: 'below' },
      'No bandwidth: the closed loop lies below −3 dB at the lowest frequencies already.',
    ],
    [
      { kind: 'no bandwidth', closed: 'above' },
      'No bandwidth: the closed loop does not fall through −3 dB below half the sample rate.',
    ],
    [
      { kind: 'too slow for the servo', fall: 6.02 },
      'With a gain lower by 6.02 dB it would be too slow for the position servo around it, and the two would oscillate.',
    ],
    [
      { kind: 'relaxes', job: 'grip', quick: 40_000, slow: 30_000 },
      'Quick changes meet 40 N/mm at one contact, slow ones, to which the part has time to give way, 30 N/mm.',
    ],
    [
      { kind: 'crossings', at: [12.34, 5678] },
      'The loop gain passes 1 at 12.3 rad/s (1.96 Hz), 5680 rad/s (904 Hz); the phase margin is the least of them.',
    ],
    [
      { kind: 'conditionally stable', fall: 6.02 },
      'Conditionally stable: it oscillates as well when the gain falls by 6.02 dB.',
    ],
    [{ kind: 'cracks', force: 65 }, 'The part would crack at 65 N, below the working force.'],
    [{ kind: 'yields', force: 12 }, 'The part yields at 12 N; the stiffness is that of its springing back.'],
  ])('%j', (remark, text) => {
    expect(inPlainSpaces(loopNote({ remarks: [remark] }, SI))).toBe(text)
  })

  it('stands beside the others', () => {
    const remarks: LoopRemark[] = [{ kind: 'no crossover', bandwidth: false }, { kind: 'gain without bound' }]
    expect(loopNote({ remarks }, SI)).toMatch(
      /^No crossover: .*no bandwidth and no phase margin\. The gain may rise without bound\.$/,
    )
    expect(loopNote({ remarks: [] }, SI)).toBe('')
  })
})

describe('what dry friction does', () => {
  const friction: DryFriction = {
    job: 'grip',
    coulomb: 6,
    breakaway: 7.5,
    current: 0.1234,
    bristleStiffness: 2e7,
    raise: 0,
    lower: 0,
    integral: true,
    deadband: false,
  }
  const said = (some: Partial<DryFriction> = {}) => inPlainSpaces(frictionNote({ ...friction, ...some }, SI))

  it('is said with its force, current and stiffness', () => {
    expect(said()).toContain('At rest friction of up to 7.5 N (0.123 A) holds it like a spring of 20 N/µm')
  })

  it('tells stick and slip only where break-away lies above sliding friction', () => {
    expect(said()).toContain(
      'Break-away lies 1.5 N above sliding friction: with an integral in the loop the axis can stick',
    )
    expect(said({ breakaway: 6 })).not.toContain('Break-away')
  })

  it('tells what the load adds where it adds any', () => {
    expect(said({ raise: 0.35, lower: 0.2 })).toContain(
      'Under load the transmission adds 35 % of the load closing and 20 % opening.',
    )
    expect(said()).not.toContain('Under load')
  })

  it('misses a dead band only where an integral hunts', () => {
    expect(said()).toMatch(/The force loop has no dead band to end such hunting\.$/)
    expect(said({ deadband: true })).not.toContain('no dead band')
    expect(said({ integral: false })).not.toContain('no dead band')
  })

  it('is nothing on an axis without', () => {
    expect(said({ coulomb: 0, breakaway: 0 })).toBe(
      'The axis has no dry friction; the linear loops are the whole story.',
    )
    expect(said({ coulomb: 0, breakaway: 0, raise: 0.1 })).toContain('Under load')
  })
})

it('missing loops are explained, and only those', () => {
  expect(missingLoops({ openLoop: true, friction: { job: 'grip' } as DryFriction })).toMatch(
    /^The step motor runs in open loop/,
  )
  expect(missingLoops({ openLoop: false, friction: { job: 'grip' } as DryFriction })).toBe('')
})

it('the largest lag is named with its remedy', () => {
  const remedy = (lags: { currentLoop: number; hold: number; difference: number; filter: number }) =>
    inPlainSpaces(
      limitWords({ id: 'motion-delay', kind: 'delay', crossover: 100, delay: 0.005, lags }, SI, 'grip').remedy,
    )
  expect(remedy({ currentLoop: 0.001, hold: 0.0007, difference: 0.0007, filter: 0.0012 })).toBe(
    'The largest share goes with a higher servo rate: 1.4 ms.',
  )
  expect(remedy({ currentLoop: 0.001, hold: 0, difference: 0, filter: 0.0012 })).toBe(
    'The largest share goes with a shorter speed filter: 1.2 ms.',
  )
})

describe('a candidate that is not sound', () => {
  it.each<[Miss, string, string]>([
    [{ kind: 'range', path: 'servo.kp' }, 'a gain is out of range', 'servo.kp is out of range'],
    [{ kind: 'unstable' }, 'a loop is unstable', 'a loop is unstable'],
    [{ kind: 'phase margin', value: 31.26 }, 'phase margin', 'phase margin 31.3°'],
    [{ kind: 'peak sensitivity', value: 2.346 }, 'peak sensitivity', 'peak sensitivity 2.35'],
    [
      { kind: 'part', job: 'grip', part: 'softest', verdict: 'crushed' },
      'softest part crushed',
      'softest part crushed',
    ],
    [
      { kind: 'force', job: 'grip', part: 'nominal', value: 25, wanted: 36 },
      'nominal part gripped too weakly',
      'nominal part gripped too weakly, with 25 N where at least 36 N are wanted',
    ],
    [
      { kind: 'time', job: 'grip', part: 'stiffest', value: 0.25 },
      'stiffest part gripped too late',
      'stiffest part gripped too late, after 250 ms',
    ],
    [
      { kind: 'time', job: 'grip', part: 'stiffest', value: null },
      'stiffest part gripped too late',
      'stiffest part gripped too late, the force does not settle',
    ],
    [
      { kind: 'spare', job: 'grip', part: 'softest', value: 0.05 },
      'margin of the softest part',
      'margin of the softest part 5 %',
    ],
  ])('%j', (miss, words, why) => {
    expect(missWords(miss)).toBe(words)
    expect(inPlainSpaces(missWhy(miss, SI))).toBe(why)
  })
})

describe('why a setting means its force or does not', () => {
  it.each<[Ground, string]>([
    [
      { kind: 'hidden', share: 0.4 },
      'Friction may take or add 40 % of the wanted force, and the current does not show it.',
    ],
    [{ kind: 'readable', share: 0.04 }, 'Friction may take or add 4 % of the wanted force.'],
    [
      { kind: 'impact above wanted', impact: 30, wanted: 20 },
      'The impact alone, 30 N, is above the wanted 20 N before the stop can act.',
    ],
    [
      { kind: 'impact below wanted', impact: 12, share: 0.1 },
      'Friction may take or add 10 % of the wanted force. The impact, 12 N, stays below the wanted force; the stop holds a position, not a force.',
    ],
    [{ kind: 'too weak', continuous: 5, wanted: 20 }, 'The continuous force, 5 N, is below the wanted 20 N.'],
    [
      { kind: 'impact damages', impact: 90, limit: 65 },
      'The impact alone, 90 N, is above the damage limit of 65 N, whatever the clamp.',
    ],
  ])('%j', (ground, text) => {
    expect(inPlainSpaces(fitnessWhy({ job: 'grip' }, { ground }, SI))).toBe(text)
  })
})

it('a setting that comes through needs no remark, another one what would help', () => {
  const said = (setting: Parameters<typeof remarkOn>[0]) => inPlainSpaces(remarkOn(setting, 'grip', SI))
  expect(said({ trouble: null, remedies: [] })).toBe('')
  expect(said({ trouble: 'coarse', remedies: [] })).toBe('rounding error above 1 %: no scale factor by itself helps')
  expect(
    said({
      trouble: 'lost',
      remedies: [
        { scale: 'shift', bound: 'least', value: 20 },
        { scale: 'samplePeriod', bound: 'most', value: 0.0005 },
      ],
    }),
  ).toBe('rounds to 0 and is lost: a shift of at least 20 bit, or a sample period of at most 0.5 ms')
})

it('one unit of an output says what it does to the force, one of a reading does not', () => {
  const plain = ({ step, force }: ReturnType<typeof resolutionWords>) => [inPlainSpaces(step), inPlainSpaces(force)]
  expect(plain(resolutionWords({ id: 'current', step: 0.001, force: 0.123 }, 'grip', SI))).toEqual([
    '1 mA',
    '0.123 N at one contact',
  ])
  expect(plain(resolutionWords({ id: 'wanted-speed', step: 0.002, force: 0.4 }, 'grip', SI))).toEqual([
    '2 mm/s',
    '0.4 N on the stiffest part in one period of the force loop',
  ])
  expect(plain(resolutionWords({ id: 'travel', step: 1e-6, force: null }, 'grip', SI))[1]).toBe('')
})

it('margins as entered say the periods that they are for, and which were asked for', () => {
  const entered = { samplePeriod: 0.001, forceSamplePeriod: 0.002, unfit: [] } as unknown as EnteredLoops
  const scales = { samplePeriod: 0.001, forceSamplePeriod: 0.002 } as Parameters<typeof enteredWords>[1]
  const said = (given: Partial<typeof scales> = {}) =>
    inPlainSpaces(enteredWords(entered, { ...scales, ...given }, 'grip', SI))
  expect(said()).toMatch(
    /^With the values that the integers mean, at sample periods of 1 ms and, for the force loop, 2 ms\. Rounding/,
  )
  expect(said({ samplePeriod: 0.0009 })).toContain('1 ms instead of 0.9 ms.')
  expect(said({ forceSamplePeriod: 0.0015 })).toContain('2 ms for the force loop instead of 1.5 ms.')
})
