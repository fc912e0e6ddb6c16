import { describe, expect, it } from 'vitest'
import {
  editScenario,
  PRESETS,
  type Rescue,
  readPath,
  rescues,
  type Scenario,
  type StrategyId,
  simulateGrip,
  sortRescues,
} from '../../sim/index.ts'
import { quick } from '../grip/scenarios.ts'
import { make } from '../scenario/make.ts'

const search = (scenario: Scenario, strategy: StrategyId) => [...rescues(scenario, strategy)]
const found = (scenario: Scenario, strategy: StrategyId) => search(scenario, strategy).map(({ rescue }) => rescue)

/** Verdict with a parameter at `value`, as the person would set it: by itself, and with what the rescue names along with it. */
function verdictAt(scenario: Scenario, strategy: StrategyId, rescue: Rescue, value: number) {
  const { path } = rescue
  const along = rescue.along.map((edit) => (edit.value === rescue.value ? { ...edit, value } : edit))
  const edited = editScenario(scenario, [{ path, value }, ...along])
  return edited.ok ? simulateGrip(edited.scenario, strategy).result.verdict : null
}

/** On the far side of the boundary the verdict is what the rescue says, on the near side what it was. */
function verify(scenario: Scenario, strategy: StrategyId, list: Rescue[]) {
  const held = simulateGrip(scenario, strategy).result.verdict === 'held'
  for (const rescue of list) {
    const { path, from, value, until, becomes, change, tried } = rescue
    expect(from).toBe(readPath(scenario, path))
    expect(tried[0]).toBeLessThanOrEqual(from)
    expect(tried[1]).toBeGreaterThanOrEqual(from)
    if (value === null) {
      expect([becomes, until, change]).toEqual([null, null, null])
      continue
    }
    expect([path, verdictAt(scenario, strategy, rescue, value)]).toEqual([path, becomes])
    expect([path, becomes === 'held']).toEqual([path, !held])
    if (until !== from) {
      const near = verdictAt(scenario, strategy, rescue, until!)
      // Where a rule refuses the near side with those edits, it stands at the value on the bench.
      if (near !== null) expect([path, near === 'held']).toEqual([path, held])
    }
    if (change !== null) expect(change).toBeCloseTo(value / from - 1, 12)
  }
}

const teapot = PRESETS[0]!.scenario

describe('rescues', () => {
  const list = search(teapot, 'threshold-stop')
  const sorted = sortRescues(list.map(({ rescue }) => rescue))

  it('count their progress, one a parameter', () => {
    expect(list.map(({ done }) => done)).toEqual(list.map((_, n) => n + 1))
    expect(list.every(({ of }) => of === list.length)).toBe(true)
    expect(new Set(list.map(({ rescue }) => rescue.path)).size).toBe(list.length)
  })

  it('cover what an engineer can change', () => {
    const paths = list.map(({ rescue }) => rescue.path)
    for (const path of [
      'approach.speed',
      'approach.overtravel',
      'jaws.padStiffness',
      'jaws.friction.static',
      'actuator.transmission.lead',
      'drive.currentRate',
      'servo.rate',
      'servo.kp',
      'servo.ki',
      'servo.kd',
      'strategies.thresholdStop.threshold',
      'strategies.thresholdStop.confirmTime',
    ])
      expect(paths).toContain(path)
    expect(paths.filter((path) => path.startsWith('approach.creep')).length).toBe(1)
  })

  it('hold on both sides of the boundary, by independent runs', () => verify(teapot, 'threshold-stop', sorted))

  it('are values of three digits, within 1 % of the boundary', () => {
    for (const { path, value, until } of sorted) {
      if (value === null) continue
      expect([path, Number(value.toPrecision(3))]).toEqual([path, value])
      expect([path, Math.max(value / until!, until! / value) < 1.011]).toEqual([path, true])
    }
    expect(sorted.filter(({ value }) => value !== null).length).toBeGreaterThan(3)
  })

  it('come by how little must change, what does not help last', () => {
    const sizes = sorted.map(({ value, change }) => (value === null ? Infinity : Math.abs(Math.log(1 + change!))))
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b))
  })

  it('name the creep zone that a creep speed needs', () => {
    const creep = sorted.find(({ path }) => path === 'approach.creepSpeed')!
    expect(creep.along).toEqual([{ path: 'approach.creepFrom', value: teapot.part.width + 0.001 }])
    expect(creep.value!).toBeLessThan(creep.from)
  })
})

describe('drift of a held part', () => {
  const list = found(teapot, 'current-clamp')

  it('is verified on both sides, and says what becomes of the part', () => {
    verify(teapot, 'current-clamp', list)
    expect(list.find(({ path }) => path === 'strategies.currentClamp.limit')).toMatchObject({ becomes: 'crushed' })
    expect(list.find(({ path }) => path === 'jaws.friction.static')).toMatchObject({ becomes: 'slipped' })
  })

  it('names no creep zone where there is none, and where there is one, both its ends', () => {
    expect(list.some(({ path }) => path.startsWith('approach.creep'))).toBe(false)
    const creeping = make(teapot, { 'approach.creepFrom': 0.12, 'approach.creepSpeed': 0.02 })
    const drifts = found(creeping, 'current-clamp').filter(({ path }) => path.startsWith('approach.creep'))
    expect(drifts.map(({ path }) => path)).toEqual(['approach.creepFrom', 'approach.creepSpeed'])
    verify(creeping, 'current-clamp', drifts)
  })
})

describe('other verdicts and axes', () => {
  it.each<[string, Scenario, StrategyId]>([
    ['missed', quick({ 'strategies.thresholdStop.threshold': 0.05 }), 'threshold-stop'],
    ['unstable', quick({ 'servo.kp': 2e6 }), 'current-clamp'],
    ['dropped', quick({ 'strategies.currentClamp.limit': 0.2, 'part.mass': 2, 'run.duration': 0.6 }), 'current-clamp'],
    ['crushed', quick({ 'part.crackForce': 20 }), 'sensed-force'],
  ])('%s', (verdict, scenario, strategy) => {
    expect(simulateGrip(scenario, strategy).result.verdict).toBe(verdict)
    const list = found(scenario, strategy)
    expect(list.some(({ value }) => value !== null)).toBe(true)
    verify(scenario, strategy, list)
  })

  it('a part that nothing saves', () => {
    const hopeless = quick({ 'part.crackForce': 0.001 })
    expect(found(hopeless, 'current-clamp').map(({ value }) => value)).toEqual(
      found(hopeless, 'current-clamp').map(() => null),
    )
  })

  it('a gain that stands at 0 is tried from there on, and one that helps when it is 0 is said', () => {
    const list = found(quick({ 'servo.ki': 0, 'servo.kp': 2e6 }), 'current-clamp')
    const ki = list.find(({ path }) => path === 'servo.ki')!
    expect(ki).toMatchObject({ from: 0, change: null })
    expect(ki.tried[1]).toBeGreaterThan(0)
    const hunting = found(quick({ 'strategies.sensedForce.ki': 3 }), 'sensed-force')
    expect(hunting.find(({ path }) => path === 'strategies.sensedForce.ki')!.from).toBe(3)
  })

  it('a rack is tried by its pinion and gear', () => {
    const rack = make({ actuator: { kind: 'rack' } })
    const paths = found(rack, 'current-clamp').map(({ path }) => path)
    expect(paths).toEqual(
      expect.arrayContaining(['actuator.transmission.pinionRadius', 'actuator.transmission.gearRatio']),
    )
  })
})
