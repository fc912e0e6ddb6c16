import { describe, expect, it } from 'vitest'
import { COSTS, rescueParameters } from '../../sim/ask/rescue-parameters.ts'
import type { Ran, Runner } from '../../sim/ask/runner.ts'
import { run } from '../../sim/cli/core.ts'
import {
  analyseLoops,
  editScenario,
  inPlainSpaces,
  PRESETS,
  type Rescue,
  readPath,
  rescueSentence,
  rescues,
  type Scenario,
  type StrategyId,
  simulateGrip,
  sortRescues,
  type Verdict,
  wordingOf,
} from '../../sim/index.ts'
import { quick } from '../grip/scenarios.ts'
import { make } from '../scenario/make.ts'

const found = (scenario: Scenario, strategy: StrategyId, runner: Runner = run) =>
  [...rescues(scenario, strategy, runner)].map(({ rescue }) => rescue)

const sayIn = (scenario: Scenario, rescue: Rescue) => inPlainSpaces(rescueSentence(scenario, rescue, wordingOf('si')))

/** Verdict with a parameter at `value`, as the person would set it: with what the rescue names along with it. */
function verdictAt(
  scenario: Scenario,
  strategy: StrategyId,
  { path, along }: Rescue,
  value: number,
  seed = scenario.run.seed,
) {
  const edited = editScenario(scenario, [{ path, value }, ...along, { path: 'run.seed', value: seed }])
  return edited.ok ? run(edited.scenario, strategy).result.verdict : null
}

const teapot = PRESETS[0]!.scenario

describe('rescues of the opening preset’s threshold stop', () => {
  const progress = [...rescues(teapot, 'threshold-stop', run)]
  const list = progress.map(({ rescue }) => rescue)
  const sorted = sortRescues('grip', list)
  const offered = sorted.filter(({ becomes }) => becomes === 'held')

  it('count their progress, one a parameter', () => {
    expect(progress.map(({ done }) => done)).toEqual(progress.map((_, n) => n + 1))
    expect(progress.every(({ of }) => of === list.length)).toBe(true)
    expect(new Set(list.map(({ path }) => path)).size).toBe(list.length)
  })

  it('hold with a dozen seeds of the noise, none of which the search is told', () => {
    expect(offered.length).toBeGreaterThan(3)
    for (const rescue of offered) {
      expect(rescue.seeds).toEqual({ held: 12, of: 12 })
      for (let seed = 1; seed <= 12; seed++)
        expect([rescue.path, seed, verdictAt(teapot, 'threshold-stop', rescue, rescue.value!, seed)]).toEqual([
          rescue.path,
          seed,
          'held',
        ])
    }
  })

  it('lie well inside values that hold, by independent runs', () => {
    for (const rescue of offered) {
      const { value, interval, path } = rescue
      const { from, to } = interval!
      for (const factor of [1 / 1.09, 1.09]) {
        if (path.startsWith('approach.creep')) continue
        expect([path, verdictAt(teapot, 'threshold-stop', rescue, value! * factor)]).toEqual([path, 'held'])
        expect(value! * factor).toBeGreaterThanOrEqual(from)
        expect(value! * factor).toBeLessThanOrEqual(to)
      }
      for (const end of [from, to])
        expect([path, verdictAt(teapot, 'threshold-stop', rescue, end)]).toEqual([path, 'held'])
    }
  })

  it('state borders: a little outside it is lost', () => {
    const { interval } = offered.find(({ path }) => path === 'strategies.thresholdStop.threshold')!
    const rescue = offered.find(({ path }) => path === 'strategies.thresholdStop.threshold')!
    expect(verdictAt(teapot, 'threshold-stop', rescue, interval!.to * 1.04)).not.toBe('held')
  })

  it('leave the loops their margins, by an independent analysis', () => {
    for (const { path, value, along, margins } of offered) {
      const edited = editScenario(teapot, [{ path, value }, ...along])
      if (!edited.ok) throw new Error('refused')
      const { loops } = analyseLoops(edited.scenario, { loops: ['position'] })
      const phase = Math.min(...loops.map((loop) => loop.margins!.phaseMargin ?? 180))
      expect(margins!.phaseMargin).toBe(phase)
      expect(phase).toBeGreaterThanOrEqual(30)
      expect(Math.min(...loops.map((loop) => loop.margins!.gainMargin ?? 99))).toBeGreaterThanOrEqual(6)
    }
  })

  it('come by what they cost, then by how little must change; what does not help comes last', () => {
    const ranks = offered.map(({ cost }) => COSTS.indexOf(cost))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    expect(sorted.slice(0, offered.length)).toEqual(offered)
    expect(
      sorted.slice(offered.length).every(({ value, becomes, seeds }) => value === null && !becomes && !seeds),
    ).toBe(true)
  })

  it('find that the integral alone saves it, down to none at all', () => {
    const ki = offered.find(({ path }) => path === 'servo.ki')!
    expect(ki.interval!.from).toBe(0)
    expect(verdictAt(teapot, 'threshold-stop', ki, 0)).toBe('held')
  })

  it('offer no gain that leaves a loop next to no margin, and say so', () => {
    const kp = sorted.find(({ path }) => path === 'servo.kp')!
    expect(kp).toMatchObject({ value: null, flaw: { kind: 'phase margin' } })
    expect(kp.interval).not.toBeNull()
    expect(sayIn(teapot, kp)).toMatch(/^Held from .* to .*; only [\d.]+° of phase margin are left there\.$/)
  })

  it('say what happens where none helps: slower comes too late', () => {
    const speed = sorted.find(({ path }) => path === 'approach.speed')!
    expect(speed).toMatchObject({ value: null, interval: null })
    expect(sayIn(teapot, speed)).toMatch(/: from 15\.\d mm\/s down the jaws come too late\.$/)
    expect(verdictAt(teapot, 'threshold-stop', speed, 0.015)).toBe('missed')
    expect(verdictAt(teapot, 'threshold-stop', speed, 0.017)).toBe('crushed')
  })

  it('leave room for a part that is off size: creep zone and end of the move', () => {
    const creep = sorted.find(({ path }) => path.startsWith('approach.creep'))!
    const from = creep.along.find(({ path }) => path === 'approach.creepFrom')?.value ?? creep.value
    expect((from as number) - teapot.part.width).toBeGreaterThanOrEqual(0.001 - 1e-9)
    const { tried } = sorted.find(({ path }) => path === 'approach.overtravel')!
    expect(tried[0]!.value).toBeGreaterThanOrEqual(5e-4)
  })
})

/** A made-up simulator: what becomes of a part, by the value of one parameter and the seed. */
const made =
  (path: string, verdict: (value: number, seed: number) => Verdict): Runner =>
  (scenario: Scenario) => {
    const told = verdict(readPath(scenario, path) as number, scenario.run.seed)
    return { result: { verdict: told, metrics: {}, events: {} }, weakest: null } as unknown as Ran & { traces: never }
  }

describe('of values that are known', () => {
  const path = 'approach.acceleration'
  const noisy = quick({ [path]: 4 })
  const at = (verdict: (value: number, seed: number) => Verdict) =>
    found(noisy, 'current-clamp', made(path, verdict)).find((rescue) => rescue.path === path)!

  it('the interval is found to 3 %, and the proposal lies inside', () => {
    const rescue = at((a) => (a > 5.5 && a < 19 ? 'held' : a > 15 ? 'missed' : 'crushed'))
    expect(rescue.interval!.from / 5.5).toBeLessThan(1.03)
    expect(rescue.interval!.to / 19).toBeGreaterThan(0.97)
    expect(rescue.value!).toBeGreaterThan(5.5 * 1.2)
    expect(rescue.value!).toBeLessThan(19 / 1.2)
    expect(rescue.islands).toEqual([])
  })

  it('islands are named', () => {
    const rescue = at((a) => ((a > 1 && a < 2.2) || (a > 8 && a < 12) ? 'held' : 'crushed'))
    expect(rescue.islands.length).toBe(1)
    expect(rescue.interval!.to).toBeLessThan(2.2)
    expect(rescue.islands[0]!.from / 8).toBeLessThan(1.03)
    expect(sayIn(noisy, rescue)).toMatch(/^Held from .* to .*, and from .* to .*\. At /)
  })

  it('one between too much and too little is found although no first value meets it', () => {
    const rescue = at((a) => (a > 6.7 && a < 9 ? 'held' : a >= 9 ? 'crushed' : 'dropped'))
    expect(rescue.becomes).toBe('held')
  })

  it('what holds with some seeds only is none', () => {
    const rescue = at((a, seed) => (a > 5 && (seed === 1 || seed % 3 === 0) ? 'held' : 'crushed'))
    expect(rescue).toMatchObject({ value: null, flaw: { kind: 'noise', held: 5, of: 12 } })
    expect(sayIn(noisy, rescue)).toMatch(/; well inside it is held with 5 of 12 seeds of the noise\.$/)
  })

  it('what is too narrow to be set is none', () => {
    expect(at((a) => (a > 4.9 && a < 5.2 ? 'held' : 'crushed'))).toMatchObject({
      value: null,
      flaw: { kind: 'narrow' },
    })
  })

  it('where nothing helps, both sides are told', () => {
    const rescue = at((a) => (a > 9 ? 'unstable' : a < 2 ? 'dropped' : 'crushed'))
    expect(sayIn(noisy, rescue)).toMatch(
      /^Not held at any value tried from .* to .*: from [\d.]+ m\/s² up the grip is unstable, from [\d.]+ m\/s² down it slides out\.$/,
    )
    expect(
      sayIn(
        noisy,
        at(() => 'crushed'),
      ),
    ).toMatch(/^At every value tried from .* to .* it breaks\.$/)
  })

  it('those that take more steps than a run may are not tried; what else goes wrong is not passed over', () => {
    const failing = (error: Error) => (a: number) => {
      if (a > 9) throw error
      return 'crushed' as const
    }
    const { tried } = at(failing(new RangeError('too many steps')))
    expect(Math.max(...tried.map(({ value }) => value))).toBeLessThanOrEqual(9)
    expect(Math.min(...tried.map(({ value }) => value))).toBeLessThan(2)
    expect(() => at(failing(new TypeError('a fault of the program')))).toThrow('a fault of the program')
  })
})

describe('drift of a held part', () => {
  const list = found(teapot, 'current-clamp')

  it('names the interval around the bench, what becomes of the part beyond, and the seeds', () => {
    for (const rescue of list) {
      const { path, from, value, interval, seeds, becomes } = rescue
      expect([path, seeds]).toEqual([path, { held: 12, of: 12 }])
      expect(interval!.from).toBeLessThanOrEqual(from)
      expect(interval!.to).toBeGreaterThanOrEqual(from)
      if (value === null) continue
      expect([path, verdictAt(teapot, 'current-clamp', rescue, value)]).toEqual([path, becomes])
      expect(becomes).not.toBe('held')
      expect(value < interval!.from || value > interval!.to).toBe(true)
    }
    expect(list.find(({ path }) => path === 'strategies.currentClamp.limit')).toMatchObject({ becomes: 'crushed' })
    expect(list.find(({ path }) => path === 'jaws.friction.static')).toMatchObject({ becomes: 'slipped' })
  })

  it('comes by how little it takes', () => {
    const changes = sortRescues('grip', list).flatMap(({ change }) =>
      change === null || change <= -1 ? [] : [Math.abs(Math.log(1 + change))],
    )
    expect(changes).toEqual([...changes].sort((a, b) => a - b))
  })

  it('of a creep zone has both its ends', () => {
    const creeping = make(teapot, { 'approach.creepFrom': 0.12, 'approach.creepSpeed': 0.02 })
    const paths = (scenario: Scenario) => rescueParameters(scenario, 'current-clamp', true).map(({ path }) => path)
    expect(paths(teapot).some((path) => path.startsWith('approach.creep'))).toBe(false)
    expect(paths(creeping)).toEqual(expect.arrayContaining(['approach.creepFrom', 'approach.creepSpeed']))
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
    const offered = found(scenario, strategy).filter(({ value }) => value !== null)
    expect(offered.length).toBeGreaterThan(0)
    for (const rescue of offered)
      for (const seed of [1, 5, 12])
        expect([rescue.path, verdictAt(scenario, strategy, rescue, rescue.value!, seed)]).toEqual([rescue.path, 'held'])
  })

  it('a part that nothing saves', () => {
    const hopeless = found(quick({ 'part.crackForce': 0.001 }), 'current-clamp')
    expect(hopeless.map(({ value, interval }) => [value, interval])).toEqual(hopeless.map(() => [null, null]))
  })

  it('a rack is tried by its pinion and gear, every axis by another motor', () => {
    const paths = (scenario: Scenario) => rescueParameters(scenario, 'current-clamp', false).map(({ path }) => path)
    expect(paths(make({ actuator: { kind: 'rack' } }))).toEqual(
      expect.arrayContaining([
        'actuator.transmission.pinionRadius',
        'actuator.transmission.gearRatio',
        'actuator.motor.inertia',
      ]),
    )
    expect(paths(make({ actuator: { kind: 'direct' } }))).toContain('actuator.motor.movingMass')
  })
})

describe('a search that several share', () => {
  it('finds together what one finds alone', () => {
    const scenario = quick({ 'part.crackForce': 20 })
    const shared = [0, 1, 2].map((n) =>
      [...rescues(scenario, 'current-clamp', run, { n, of: 3 })].map(({ rescue }) => rescue),
    )
    const alone = found(scenario, 'current-clamp')
    expect(shared.every((some) => some.length > 0)).toBe(true)
    expect(sortRescues('grip', shared.flat())).toEqual(sortRescues('grip', alone))
  })
})

describe('what is told of values that do not help', () => {
  it('is the verdict of the whole run: a part that is marked first breaks all the same', () => {
    const path = 'approach.acceleration'
    const early: Runner = (_scenario: Scenario, _strategy: StrategyId, wish?: object) => {
      const verdict: Verdict = wish && 'untilLost' in wish ? 'marked' : 'crushed'
      return { result: { verdict, metrics: {}, events: {} }, weakest: null } as unknown as Ran & { traces: never }
    }
    const scenario = quick({ [path]: 4 })
    const rescue = found(scenario, 'current-clamp', early).find((each) => each.path === path)!
    expect(sayIn(scenario, rescue)).toMatch(/^At every value tried from .* to .* it breaks\.$/)
  })
})
