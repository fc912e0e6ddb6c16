import { describe, expect, it } from 'vitest'
import { named } from '../../../../app/views/loops/scales.ts'
import { evenTicks, frameOf, logTicks, wholeOf } from '../../../../app/views/loops/tune/frame.ts'
import {
  choices,
  differInMore,
  goalsOf,
  misses,
  nearest,
  type Placed,
  told,
} from '../../../../app/views/loops/tune/points.ts'
import { editScenario, PRESETS, type TuneCandidate } from '../../../../sim/index.ts'

const candidate = (some: Partial<TuneCandidate>): TuneCandidate => ({
  edits: [],
  phaseMargin: 50,
  peakSensitivity: 1.5,
  time: null,
  peak: null,
  ripple: null,
  settled: null,
  spare: null,
  share: null,
  sound: true,
  miss: null,
  ...some,
})

describe('what can be picked', () => {
  const quick = candidate({ time: 1, peak: 3, ripple: 0.3 })
  const gentle = candidate({ time: 2, peak: 1, ripple: 0.2 })
  const calm = candidate({ time: 3, peak: 2, ripple: 0.1 })

  it('is the trade-off, with the best by the objective where it lies beside it', () => {
    expect(choices([calm, gentle, quick], 'time')).toEqual([quick, gentle])
    expect(choices([calm, gentle, quick], 'ripple')).toEqual([quick, gentle, calm])
  })

  it('is nothing where none is sound', () => {
    expect(choices([candidate({ sound: false, miss: { kind: 'phase margin', value: 31 } })], 'time')).toEqual([])
  })
})

it('the share of parts held is a goal, told where it is known, and its best is there to be picked', () => {
  expect(goalsOf('grip').map(({ value }) => value)).toContain('share')
  const quick = candidate({ time: 0.1, peak: 30, share: 0.8 })
  const late = candidate({ time: 0.3, peak: 40, share: 0.9 })
  expect(choices([late, quick], 'share')).toEqual([quick, late])
  expect(told(quick as Placed, 'grip', 'si')).toMatch(/^grip time 100.*, peak force 30.*, 80\.0 % of the parts held$/)
  expect(told({ ...quick, share: null } as Placed, 'grip', 'si')).toMatch(/peak force 30.0\sN$/)
  expect(told(quick as Placed, 'cap', 'us')).toMatch(
    /^tightening time 100.*, peak torque 266\slbf·in, 80\.0 % of the parts tight$/,
  )
})

describe('what is missed', () => {
  const lost = [
    candidate({ sound: false, miss: { kind: 'part', job: 'grip', part: 'softest', verdict: 'crushed' } }),
    candidate({ sound: false, miss: { kind: 'phase margin', value: 31 }, phaseMargin: 31 }),
    candidate({ sound: false, miss: { kind: 'phase margin', value: 42 }, phaseMargin: 42 }),
    candidate({}),
  ]

  it('is counted, the most frequent first', () => {
    expect(misses(lost)).toEqual([
      { miss: 'phase margin', count: 2 },
      { miss: 'softest part crushed', count: 1 },
    ])
  })

  it('comes with how near a margin came, and with nothing where that has no measure', () => {
    expect(nearest(lost, 'phase margin')).toBe('The largest of those is 42.0°.')
    expect(nearest(lost, 'softest part crushed')).toBe('')
  })
})

it('a search is out of date when something other than its gains has changed', () => {
  const { scenario } = PRESETS[0]!
  const change = (path: string, value: number) => {
    const edited = editScenario(scenario, [{ path, value }])
    if (!edited.ok) throw new Error('refused')
    return edited.scenario
  }
  const tuned = candidate({ edits: [{ path: 'servo.kp', value: 5000 }] })
  expect(differInMore(scenario, change('servo.kp', 6000), tuned)).toBe(false)
  expect(differInMore(scenario, change('part.stiffness', 2e5), tuned)).toBe(true)
})

describe('frame of the trade-off', () => {
  const at = (time: number, peak: number) => candidate({ time, peak }) as Placed

  it('has every point inside, quick ones on the left and strong ones above', () => {
    const points = [at(0.03, 41), at(0.4, 38)]
    const { x, y, timeTicks, effortTicks } = frameOf(wholeOf(points), 600, named('ms', 1e3), named('N'))
    expect(x(0.03)).toBeGreaterThan(50)
    expect(x(0.03)).toBeLessThan(x(0.4))
    expect(x(0.4)).toBeLessThan(590)
    expect(y(41)).toBeLessThan(y(38))
    expect(timeTicks.map(({ text }) => text)).toEqual(['50', '100', '200', '500'])
    expect(effortTicks.length).toBeGreaterThan(1)
  })

  it('stands for a single point as well', () => {
    const { x, y } = frameOf(wholeOf([at(0.1, 5)]), 600, named('ms', 1e3), named('N'))
    expect([x(0.1), y(5)].every(Number.isFinite)).toBe(true)
  })

  it('has round ticks', () => {
    expect(logTicks(20, 700)).toEqual([20, 50, 100, 200, 500])
    expect(logTicks(100.2, 104)).toEqual(evenTicks(100.2, 104))
    expect(evenTicks(37.2, 41.1)).toEqual([38, 39, 40, 41])
  })
})
