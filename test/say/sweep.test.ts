/** Whatever happens, a reader who has chosen US units meets no SI unit that those replace. */
import { describe, expect, it } from 'vitest'
import type { Flaw } from '../../sim/ask/rescue-judge.ts'
import {
  analyseLoops,
  type Doubt,
  driveSheet,
  type Edit,
  editScenario,
  faultIn,
  faultLine,
  fitnessWhy,
  frictionNote,
  type GripResult,
  LOOPS,
  limitsOf,
  limitWords,
  loopNote,
  METRICS,
  metricText,
  missWhy,
  type Overload,
  PRESETS,
  RATINGS,
  type Rescue,
  reasonOf,
  rescueSentence,
  type Scenario,
  SIMPLIFICATIONS,
  STRATEGIES,
  scalesFrom,
  settingsMarkdown,
  simulateGrip,
  textIn,
  toldOf,
  VERDICTS,
  type Why,
  whySentence,
  wordingOf,
} from '../../sim/index.ts'
import type { LoopRemark } from '../../sim/loops/remarks.ts'
import { modelTable, spokenModel } from '../../sim/say/model-table.ts'
import type { Ground } from '../../sim/strategy/strategy.ts'
import { metricUnits } from './support.ts'

const US = wordingOf('us')
const SI = wordingOf('si')

/** The same call in both systems: SI shows that there is a unit to be found, US has none of SI. */
function follows(say: (words: typeof US) => string, hasUnit = true) {
  if (hasUnit) expect(metricUnits(say(SI)), say(SI)).not.toEqual([])
  const us = say(US)
  expect(metricUnits(us), us).toEqual([])
  expect(us).not.toMatch(/NaN|undefined|null|Infinity|\{|\}/)
}

const CASES = PRESETS.flatMap(({ id, scenario }) =>
  STRATEGIES.map((strategy) => ({ name: `${id}, ${strategy.id}`, scenario, strategy: strategy.id })),
)

/** A part that has every limit. */
const limited = (scenario: Scenario): Scenario => ({
  ...scenario,
  part: { ...scenario.part, markForce: 5, yieldForce: 6, crackForce: 7 },
})

/** Every rating exceeded, and every ground of a doubt. */
const EVERY = RATINGS.map((rating): Overload => ({ rating, of: 'motor', value: 200, limit: 100, over: 100 }))
const DOUBTS: Doubt['ground'][] = ['verdict', 'margin', 'error', 'untold']

/** The result as each of the verdicts would have it. */
const all = ({ result }: { result: GripResult }): GripResult[] =>
  VERDICTS.flatMap((verdict) => {
    const { metrics } = result
    const event = 0.3
    const events = { ...result.events, crack: event, slip: event, drop: event, unstable: event }
    const full = {
      ...metrics,
      peakForce: 12,
      settledForce: 9,
      requiredForce: 10,
      holdMargin: -0.1,
      damageMargin: 0.2,
      slipDistance: 0.002,
      windingTemperature: 1000,
    }
    return [
      { ...result, verdict, events, metrics: full },
      { ...result, verdict, events, metrics: { ...full, settledForce: 11 } },
      { ...result, verdict, events, metrics: { ...full, contactTime: null } },
      { ...result, verdict, events, metrics: full, overloads: EVERY },
      { ...result, verdict, events, metrics: { ...full, holdTime: null }, overloads: EVERY.slice(0, 1) },
      ...DOUBTS.map((ground) => ({
        ...result,
        ...{ verdict, events, metrics: full, doubt: { ground, step: 1e-6, verdict, error: 0.3 } },
      })),
    ]
  })

/** Whose sentence tells times at most, on an axis within its ratings. */
const tellsTimes = ({ verdict, overloads }: GripResult) =>
  (verdict === 'missed' || verdict === 'unstable') && overloads.length === 0

describe.each(CASES)('$name in US units', ({ scenario, strategy }) => {
  const simulated = simulateGrip(scenario, strategy)

  it('the verdict and its reason, whatever the verdict', () => {
    follows((words) => reasonOf(scenario, simulated.result, words))
    for (const result of all(simulated))
      follows((words) => reasonOf(limited(scenario), result, words), !tellsTimes(result))
  })

  it('what would save a part, and what happens instead', () => {
    const margins = { stable: true, phaseMargin: 50, gainMargin: 12, delayMargin: 0.002, peakSensitivity: 1.5 }
    const interval = { from: 0.02, to: 0.03, open: { from: false, to: true } }
    const tried = VERDICTS.map((verdict, n) => ({ value: 0.01 * (n + 1), verdict, late: n > 4 }))
    const base: Rescue = {
      path: 'approach.speed',
      label: 'Speed',
      cost: 'setting',
      from: 0.03,
      value: null,
      change: null,
      becomes: null,
      interval,
      islands: [{ ...interval, to: 0.02 }],
      margins,
      seeds: { held: 12, of: 12 },
      flaw: null,
      along: [],
      tried,
    }
    const flaws: Flaw[] = [
      { kind: 'narrow' },
      { kind: 'unstable loop' },
      { kind: 'phase margin', value: 20 },
      { kind: 'gain margin', value: 3 },
      { kind: 'noise', held: 4, of: 12 },
    ]
    const told: Rescue[] = [
      base,
      { ...base, value: 0.025, becomes: 'held' },
      { ...base, value: 0.04, becomes: 'dropped' },
      { ...base, interval: null },
      ...flaws.map((flaw) => ({ ...base, flaw })),
    ]
    for (const rescue of told) follows((words) => rescueSentence(scenario, rescue, words))
  })

  it('what a set of gains misses', () => {
    follows((words) => missWhy({ kind: 'force', job: 'grip', part: 'softest', value: 25, wanted: 36 }, words))
    follows((words) => missWhy({ kind: 'time', job: 'grip', part: 'softest', value: 0.2 }, words), false)
    follows((words) => missWhy({ kind: 'spare', job: 'grip', part: 'softest', value: 0.2 }, words), false)
  })

  it('why the force became what it was, whatever the verdict', () => {
    const { metrics, events, cause } = simulated.result
    const way = { contact: 0.02, end: 0.03, arrival: 0.4, lift: 0.5 }
    const run = {
      metrics: { ...metrics, contactTime: null },
      events: { ...events, engaged: null },
      cause,
      feels: 'effort' as const,
      travel: 0.01,
      way,
    }
    const causes: Why['causes'] = [
      {
        cause: 'setting',
        label: 'Force that the setting means',
        without: '',
        force: 10,
        share: 0.8,
        alone: null,
        last: null,
        error: null,
      },
      {
        cause: 'momentum',
        label: 'Momentum of the approach',
        without: '',
        force: 2,
        share: 0.2,
        alone: null,
        last: null,
        error: null,
      },
      {
        cause: 'arm',
        label: 'Acceleration of the arm',
        without: '',
        force: -1,
        share: 0.1,
        alone: null,
        last: null,
        error: null,
      },
    ]
    const orders = { counted: 2, drawn: false }
    const about = { job: 'grip', verdict: 'held', figure: 'peak' } as const
    const base: Why = { ...about, force: 12, bound: 10, causes, untold: [], orders, run: null }
    const whys = VERDICTS.flatMap((verdict): Why[] => [
      { ...base, verdict },
      { ...base, verdict, bound: null },
      { ...base, verdict, figure: 'hold' },
      { ...base, verdict, figure: 'hold', bound: 20 },
      { ...base, verdict, figure: 'hold', bound: null, causes: causes.slice(0, 1) },
    ])
    for (const why of whys) follows((words) => whySentence(limited(scenario), why, words))
    const soft = { ...scenario, part: { ...scenario.part, markForce: 5, yieldForce: 60 } }
    follows((words) => whySentence(soft, { ...base, verdict: 'marked' }, words))
    const nothing: Why = { ...base, verdict: 'missed', force: null, bound: null, causes: [] }
    const engaged = { ...run, events: { ...events, engaged: 0.2 } }
    for (const missed of [run, engaged, { ...run, way: { ...way, end: 0.01 } }])
      follows((words) => whySentence(scenario, { ...nothing, run: missed }, words))
    const times = [{ ...run, way: { ...way, lift: 0.1 } }, { ...run, metrics: { ...metrics, contactTime: 0.1 } }, null]
    for (const timed of times) follows((words) => whySentence(scenario, { ...nothing, run: timed }, words), false)
  })

  it('every figure', () => {
    for (const metric of METRICS) {
      const { text, symbol } = metricText(metric, metric.value(simulated.result), 'us')
      expect(metricUnits(`${text} ${symbol}`)).toEqual([])
    }
  })
})

describe.each(PRESETS)('the loops of $id in US units', ({ scenario }) => {
  const result = analyseLoops(limited(scenario))

  it('notes, friction, limits', () => {
    for (const analysis of result.loops) {
      const relaxes = analysis.remarks.some(({ kind }) => kind === 'relaxes')
      follows((words) => loopNote(analysis, words), relaxes)
    }
    follows((words) => frictionNote(result.friction, words))
    for (const loop of LOOPS)
      for (const limit of limitsOf(scenario, loop)) {
        const metric = ['resonance', 'encoder', 'force-noise', 'speed', 'contact', 'free-air'].includes(limit.id)
        follows((words) => Object.values(limitWords(limit, words, scenario.job)).join(' '), metric)
      }
  })

  it('the settings sheet', () => {
    const scales = scalesFrom(scenario)
    const sheet = driveSheet(scenario, scales)
    follows((words) => settingsMarkdown(sheet, words, []))
    const us = settingsMarkdown(sheet, US, [])
    expect(us).toContain('counts per inch')
    expect(us).not.toMatch(/[Nn]ewton|metre|\| (N|m|A\/m|m\/s|m\/s²) \|/)
  })
})

describe('in US units', () => {
  it('each remark on a loop', () => {
    const remarks: LoopRemark[] = [
      { kind: 'cracks', force: 3 },
      { kind: 'yields', force: 3 },
      { kind: 'relaxes', job: 'grip', quick: 4e4, slow: 2e4 },
    ]
    for (const remark of remarks) follows((words) => loopNote({ remarks: [remark] }, words))
    const bare: LoopRemark[] = [
      { kind: 'unstable', outside: 1, of: 3, swing: 300, doubling: 0.01 },
      { kind: 'nothing to feel', job: 'grip' },
      { kind: 'on the border', swing: 0 },
      { kind: 'on the border', swing: 300 },
      { kind: 'by itself', stability: 'stable' },
      { kind: 'by itself', stability: 'unstable' },
      { kind: 'no gain' },
      { kind: 'no crossover', bandwidth: false },
      { kind: 'no crossover', bandwidth: true },
      { kind: 'no bandwidth', closed: 'below' },
      { kind: 'no bandwidth', closed: 'above' },
      { kind: 'crossings', at: [100, 2000.4] },
      { kind: 'gain without bound' },
      { kind: 'conditionally stable', fall: 6 },
      { kind: 'too slow for the servo', fall: 6 },
      { kind: 'content with any force', job: 'grip' },
      { kind: 'idle integral' },
    ]
    for (const remark of bare) follows((words) => loopNote({ remarks: [remark] }, words), false)
  })

  it('why a strategy is honest on an axis or not', () => {
    const forces: Ground[] = [
      { kind: 'impact above wanted', impact: 30, wanted: 20 },
      { kind: 'impact below wanted', impact: 10, share: 0.1 },
      { kind: 'too weak', continuous: 5, wanted: 20 },
      { kind: 'impact damages', impact: 90, limit: 65 },
    ]
    for (const ground of forces) follows((words) => fitnessWhy({ job: 'grip' }, { ground }, words))
    const bare: Ground[] = [
      { kind: 'fixed current' },
      { kind: 'stalled rotor' },
      { kind: 'gauge and give' },
      { kind: 'gauge and lock' },
      { kind: 'hidden', share: 0.4 },
      { kind: 'readable', share: 0.04 },
    ]
    for (const ground of bare) follows((words) => fitnessWhy({ job: 'grip' }, { ground }, words), false)
  })

  it('texts that stand beside what they describe', () => {
    const texts = [
      ...METRICS.map(({ note }) => note),
      ...SIMPLIFICATIONS.flatMap(({ title, text, bound }) => [
        title,
        text,
        bound.how === 'unknown' ? bound.measure : bound.basis,
      ]),
    ]
    for (const text of texts) follows((words) => textIn(text, words), false)
  })

  it('the table of the model', () => {
    const metrics = { peakForce: 50, settledForce: 40, holdMargin: 0.2, windingTemperature: 40 }
    const outcome = { verdict: 'held', metrics }
    const run = { id: 'x', label: 'halved', edits: [], faults: [] }
    const report = {
      strategy: 'current-clamp',
      told: toldOf({ job: 'grip' }).map(({ id, label, unit, shown }) => ({ id, label, unit, ...(shown && { shown }) })),
      base: { ...outcome, metrics: { ...metrics, peakForce: 48, windingTemperature: 41, holdMargin: 0.1 } },
      simplifications: [
        {
          id: 'x',
          element: 'heat',
          title: 'From {25 °C} on',
          how: 'runs',
          basis: 'Closed form.',
          figures: [{ label: 'Force', value: 3, unit: 'N' }],
          runs: [{ ...run, outcome }],
        },
      ],
    } as const
    const { simplifications, ...rest } = structuredClone(report) as unknown as Parameters<typeof spokenModel>[0]
    follows((words) => modelTable(spokenModel({ ...rest, simplifications }, words), words))
  })

  it('faults of a scenario', () => {
    const { scenario } = PRESETS[0]!
    const edits: Edit[][] = [
      [{ path: 'part.width', value: 0.2 }],
      [{ path: 'approach.speed', value: 1e9 }],
      [{ path: 'part.mass', value: -1 }],
      [{ path: 'actuator.transmission.breakaway', value: 0 }],
    ]
    for (const each of edits) {
      const checked = editScenario(scenario, each)
      if (checked.ok) throw new Error(`${each[0]!.path} is taken`)
      for (const fault of checked.faults) follows(({ system }) => faultLine(faultIn(fault, scenario, system)))
    }
  })
})
