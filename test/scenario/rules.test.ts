import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkScenario, type Edit, editScenario, type Fault, type Scenario } from '../../sim/index.ts'
import { divides } from '../../sim/scenario/rule.ts'
import { rulesOf } from '../../sim/scenario/rules.ts'
import { make } from './make.ts'

const defaults = make()

const edited = (edits: Record<string, unknown>): Fault[] => {
  const list: Edit[] = Object.entries(edits).map(([path, value]) => ({ path, value }))
  const checked = editScenario(defaults, list)
  return checked.ok ? [] : checked.faults
}

const move = (start: number) => ({ start, axis: 'across', acceleration: 5, duration: 0.4, jerk: 200 })

const varied = (changes: object = {}) => ({ path: 'part.width', law: 'normal', sd: 1e-4, ...changes })

const QUANTITY = 'the path of a quantity that this scenario has, such as part.width'
const PAIR = 'two different paths that stand in spread.varies'

/** Edits of the default scenario, and the one fault that they make. */
const CASES: [what: string, edits: Record<string, unknown>, fault: Fault][] = [
  [
    'an opening smaller than the part',
    { 'jaws.opening': 0.05 },
    { path: 'jaws.opening', given: '0.05 m', allowed: "more than the part's width of 0.07 m" },
  ],
  [
    'an opening as wide as the part',
    { 'jaws.opening': 0.07 },
    { path: 'jaws.opening', given: '0.07 m', allowed: "more than the part's width of 0.07 m" },
  ],
  [
    'a servo rate that does not divide the current loop rate',
    { 'servo.rate': 3000, 'strategies.sensedForce.rate': 1000 },
    {
      path: 'servo.rate',
      given: '3000 1/s',
      allowed: "a rate that divides the current loop's 20000 1/s, such as 2500 1/s",
    },
  ],
  [
    'a servo faster than the current loop',
    { 'servo.rate': 40000 },
    {
      path: 'servo.rate',
      given: '40000 1/s',
      allowed: "a rate that divides the current loop's 20000 1/s, such as 20000 1/s",
    },
  ],
  [
    'a force loop rate that does not divide the servo rate',
    { 'strategies.sensedForce.rate': 1500 },
    {
      path: 'strategies.sensedForce.rate',
      given: '1500 1/s',
      allowed: "a rate that divides the servo's 4000 1/s, such as 1000 1/s",
    },
  ],
  [
    'a step that does not divide the period of the current loop',
    { 'run.step': 3e-5 },
    {
      path: 'run.step',
      given: '0.00003 s',
      allowed: "null, or a step that divides the current loop's period of 0.00005 s",
    },
  ],
  [
    'a step so short that the run has too many',
    { 'run.step': 1e-8, 'run.duration': 4 },
    {
      path: 'run.step',
      given: '1e-8 s',
      allowed: 'null, or at least 2e-8 s, so that the run has at most 200000000 steps',
    },
  ],
  [
    'a peak current below the continuous one',
    { 'actuator.motor.continuousCurrent': 10 },
    { path: 'actuator.motor.peakCurrent', given: '9 A', allowed: 'at least the continuous current of 10 A' },
  ],
  [
    'a servo limit above the peak current',
    { 'servo.currentLimit': 9.5 },
    { path: 'servo.currentLimit', given: '9.5 A', allowed: "at most the motor's peak current of 9 A" },
  ],
  [
    'a clamp above the peak current',
    { 'strategies.currentClamp.limit': 9.5 },
    { path: 'strategies.currentClamp.limit', given: '9.5 A', allowed: "at most the motor's peak current of 9 A" },
  ],
  [
    'a break-away friction below the sliding one',
    { 'actuator.transmission.breakaway': 5 },
    { path: 'actuator.transmission.breakaway', given: '5 N', allowed: 'at least the Coulomb friction of 6 N' },
  ],
  [
    'a sliding pad friction above the static one',
    { 'jaws.friction.sliding': 0.6 },
    { path: 'jaws.friction.sliding', given: '0.6', allowed: 'at most the static friction of 0.5' },
  ],
  [
    'a creep speed above the approach speed',
    { 'approach.creepSpeed': 0.1, 'approach.creepFrom': 0.08 },
    { path: 'approach.creepSpeed', given: '0.1 m/s', allowed: 'at most the approach speed of 0.05 m/s' },
  ],
  [
    'a thread that jams',
    { 'actuator.transmission.threadFriction': 0.9, 'actuator.transmission.lead': 0.05 },
    {
      path: 'actuator.transmission.threadFriction',
      given: '0.9',
      allowed: 'less than what jams the thread: friction · lead < π · pitch diameter · cos(flank half-angle)',
    },
  ],
  [
    'a lift after the first move',
    { 'arm.lift': 0.9, 'arm.moves': [move(1), move(0.8)] },
    { path: 'arm.lift', given: '0.9 s', allowed: 'null, or a time no later than the first move' },
  ],
  [
    'a lift after the run',
    { 'arm.lift': 1.5 },
    { path: 'arm.lift', given: '1.5 s', allowed: 'null, or a time within the run of 1.5 s' },
  ],
  [
    'the second of two moves after the run',
    { 'arm.moves': [move(1), move(2)] },
    { path: 'arm.moves[1].start', given: '2 s', allowed: 'a time within the run of 1.5 s' },
  ],
  [
    'a power loss after the run',
    { 'events.powerLoss': { time: 7, windings: 'open' } },
    { path: 'events.powerLoss', given: '7 s', allowed: 'null, or a time within the run of 1.5 s' },
  ],
  [
    'a release after the run',
    { 'events.release': { time: 7 } },
    { path: 'events.release', given: '7 s', allowed: 'null, or a time within the run of 1.5 s' },
  ],
  [
    'a release before the support is gone',
    { 'events.release': { time: 0.9 } },
    { path: 'events.release', given: '0.9 s', allowed: 'null, or a time after the support is taken away at 1 s' },
  ],
  [
    'a cycle shorter than the run',
    { 'run.cycle': 1 },
    { path: 'run.cycle', given: '1 s', allowed: "null, or at least the run's 1.5 s" },
  ],
  [
    'a motor without steps in open loop',
    { 'actuator.motor.openLoop': true },
    { path: 'actuator.motor.openLoop', given: 'true', allowed: 'false, unless the family is "step-screw"' },
  ],
  [
    'a requirement that asks for nothing',
    { 'requirements.holdMargin': {} },
    { path: 'requirements.holdMargin', given: 'neither "least" nor "most"', allowed: 'one of them, or both' },
  ],
  [
    'a requirement that no figure meets',
    { 'requirements.peakForce': { least: 30, most: 20 } },
    { path: 'requirements.peakForce.most', given: '20', allowed: 'at least the least of 30' },
  ],
  [
    'a spread of what the scenario does not have',
    { 'spread.varies': [varied({ path: 'part.colour' })] },
    { path: 'spread.varies[0].path', given: 'part.colour', allowed: QUANTITY },
  ],
  [
    'a spread of a limit that is left out',
    { 'spread.varies': [varied({ path: 'part.markForce' })] },
    { path: 'spread.varies[0].path', given: 'part.markForce', allowed: QUANTITY },
  ],
  [
    'a spread of the seed',
    { 'spread.varies': [varied({ path: 'run.seed' })] },
    { path: 'spread.varies[0].path', given: 'run.seed', allowed: 'a quantity of the hardware, the part or the job' },
  ],
  [
    'a quantity that varies twice',
    { 'spread.varies': [varied(), varied()] },
    { path: 'spread.varies[1].path', given: 'part.width a second time', allowed: 'each quantity once' },
  ],
  [
    'a law without its size',
    { 'spread.varies': [varied({ sd: undefined })] },
    { path: 'spread.varies[0]', given: 'no size', allowed: 'for the law "normal" "sd" or "tolerance", "cpk"' },
  ],
  [
    'a law with two sizes that say the same',
    { 'spread.varies': [varied({ tolerance: 1e-3, cpk: 1 })] },
    {
      path: 'spread.varies[0]',
      given: '"sd", "tolerance", "cpk"',
      allowed: 'for the law "normal" "sd" or "tolerance", "cpk"',
    },
  ],
  [
    'a law with the size of another one',
    { 'spread.varies': [varied({ half: 1e-3 })] },
    {
      path: 'spread.varies[0].half',
      given: 'a size that the law "normal" does not have',
      allowed: '"sd", "tolerance", "cpk", "within"',
    },
  ],
  [
    'a triangle whose ends lie the wrong way round',
    { 'spread.varies': [{ path: 'part.width', law: 'triangular', low: 0.08, mode: 0.07, high: 0.09 }] },
    { path: 'spread.varies[0].mode', given: '0.07', allowed: 'from the low end 0.08 to the high end 0.09' },
  ],
  [
    'a measured list without values',
    { 'spread.varies': [{ path: 'part.width', law: 'measured', values: [] }] },
    { path: 'spread.varies[0].values', given: 'a list of 0', allowed: 'at least one value' },
  ],
  [
    'a correlation with what does not vary',
    { 'spread.varies': [varied()], 'spread.together': [{ paths: ['part.width', 'part.mass'], correlation: 0.5 }] },
    { path: 'spread.together[0].paths', given: 'part.width, part.mass', allowed: PAIR },
  ],
  [
    'a correlation with itself',
    { 'spread.varies': [varied()], 'spread.together': [{ paths: ['part.width', 'part.width'], correlation: 0.5 }] },
    { path: 'spread.together[0].paths', given: 'part.width, part.width', allowed: PAIR },
  ],
]

/** Those of other jobs are shown with them, in `test/job`. */
const GRIP_RULES = rulesOf('grip')

describe('rules between keys', () => {
  it.each(CASES)('refuse %s', (_, edits, fault) => {
    expect(edited(edits)).toEqual([fault])
  })

  it('are all shown above, each by itself', () => {
    const fired = new Set<number>()
    for (const [, edits] of CASES) {
      const scenario = structuredClone(defaults) as unknown as Record<string, unknown>
      for (const [path, value] of Object.entries(edits)) set(scenario, path.split('.'), value)
      GRIP_RULES.forEach((rule, index) => {
        if (rule.check(scenario as unknown as Scenario).length > 0) fired.add(index)
      })
    }
    expect([...fired].sort((a, b) => a - b)).toEqual(GRIP_RULES.map((_, index) => index))
  })

  it('allow the edge of what they forbid', () => {
    expect(edited({ 'servo.rate': 20000, 'strategies.sensedForce.rate': 20000 })).toEqual([])
    expect(edited({ 'actuator.motor.peakCurrent': 6, 'servo.currentLimit': 6 })).toEqual([])
    expect(edited({ 'actuator.transmission.breakaway': 6, 'jaws.friction.sliding': 0.5 })).toEqual([])
    expect(edited({ 'arm.lift': 0.8, 'arm.moves': [move(0.8)] })).toEqual([])
    expect(edited({ 'run.step': 5e-5, 'run.cycle': 1.5 })).toEqual([])
    expect(edited({ 'actuator.motor.openLoop': true, 'actuator.family': 'step-screw' })).toEqual([])
  })

  it('refuse open loop on a rack, whose motor has no steps', () => {
    const checked = checkScenario({ actuator: { kind: 'rack', motor: { openLoop: true } } })
    expect(checked.ok ? [] : checked.faults.map(({ path }) => path)).toEqual(['actuator.motor.openLoop'])
  })

  it('leave a creep speed alone where there is no creep zone', () => {
    expect(edited({ 'approach.creepSpeed': 0.1, 'approach.creepFrom': 0.07 })).toEqual([])
  })

  it('are asked of sound keys only: a bad width does not also blame the opening', () => {
    expect(edited({ 'part.width': 'wide', 'jaws.opening': 0.01 }).map((fault) => fault.path)).toEqual(['part.width'])
    expect(edited({ part: 3, 'jaws.opening': 0.01 }).map((fault) => fault.path)).toEqual(['part'])
    expect(edited({ 'arm.moves': [{ start: 'soon' }], 'arm.lift': 1.2 }).map((fault) => fault.path)).toEqual([
      'arm.moves[0].start',
    ])
  })

  it('are asked also when other keys are broken', () => {
    expect(edited({ 'servo.kp': -1, 'jaws.opening': 0.01 }).map((fault) => fault.path)).toEqual([
      'servo.kp',
      'jaws.opening',
    ])
  })

  it('fire together: every broken rule in one answer', () => {
    const all = edited({
      'jaws.opening': 0.05,
      'servo.rate': 3000,
      'servo.currentLimit': 50,
      'strategies.currentClamp.limit': 50,
      'actuator.transmission.breakaway': 1,
      'jaws.friction.sliding': 2,
      'arm.lift': 100,
      'run.step': 3e-5,
    })
    expect(all.map((fault) => fault.path).sort()).toEqual(
      [
        'jaws.opening',
        'servo.rate',
        'servo.currentLimit',
        'strategies.currentClamp.limit',
        'actuator.transmission.breakaway',
        'jaws.friction.sliding',
        'arm.lift',
        'run.step',
      ].sort(),
    )
  })

  it('suggest a rate that is itself accepted', () => {
    const currentRate = fc.integer({ min: 500, max: 200_000 })
    const rate = fc.integer({ min: 50, max: 100_000 })
    fc.assert(
      fc.property(currentRate, rate, (current, servo) => {
        const given = { 'drive.currentRate': current, 'servo.rate': servo }
        const fault = edited(given).find(({ path }) => path === 'servo.rate')
        fc.pre(fault !== undefined)
        const suggested = Number(/such as (\S+) 1\/s$/.exec(fault!.allowed)![1])
        expect(edited({ ...given, 'servo.rate': suggested }).filter(({ path }) => path === 'servo.rate')).toEqual([])
      }),
    )
  })
})

describe('divides', () => {
  it('takes whole multiples of decimal numbers, at least one', () => {
    expect(divides(0.1, 0.3)).toBe(true)
    expect(divides(1e-6, 5e-5)).toBe(true)
    expect(divides(0.3, 0.1)).toBe(false)
    expect(divides(0.2, 0.3)).toBe(false)
    expect(divides(1, 1e6 + 0.5)).toBe(false)
  })
})

function set(target: Record<string, unknown>, keys: string[], value: unknown): void {
  const [first, ...rest] = keys
  if (rest.length === 0) target[first!] = value
  else set(target[first!] as Record<string, unknown>, rest, value)
}
