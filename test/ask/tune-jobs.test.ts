/** The search for gains on work that is not gripped: the same judge, by the figures that each job names. */
import { describe, expect, it } from 'vitest'
import type { AnyRunner } from '../../sim/ask/runner.ts'
import { bestOf, tuneGains } from '../../sim/ask/tune.ts'
import type { TuneOptions } from '../../sim/ask/tune-judge.ts'
import { run } from '../../sim/cli/core.ts'
import {
  ALL_PRESETS,
  editScenario,
  inPlainSpaces,
  jobOf,
  missWhy,
  missWords,
  type Scenario,
  strategyOf,
} from '../../sim/index.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'
import { SI } from '../say/support.ts'

const preset = (id: string) => ALL_PRESETS.find((each) => each.id === id)!.scenario
const any = run as AnyRunner
const OPTIONS: TuneOptions = {
  strategy: 'current-clamp',
  objective: 'time',
  phaseMargin: 45,
  peakSensitivity: 2,
  spread: 0.3,
}

/** All that gives under the effort, by the keys of the file. */
const GIVES: Record<string, string[]> = {
  'cast-arm': ['ram.stiffness', 'bore.shoulder.stiffness', 'joint.stiffness'],
  'jar-lid': ['liner.stiffness', 'chuck.stiffness', 'closure.stiffness'],
  'tray-film': ['web.modulus'],
}

/** The three runs, made without a line of the search. */
function three(id: string, scenario: Scenario, { strategy, spread }: TuneOptions) {
  const at = (path: string) =>
    path.split('.').reduce((value, key) => (value as Record<string, unknown>)[key], scenario as unknown) as number
  return [1 - spread, 1, 1 + spread].map((factor) => {
    const edited = editScenario(
      scenario,
      GIVES[id]!.map((path) => ({ path, value: at(path) * factor })),
    )
    if (!edited.ok) throw new Error('refused')
    return any(edited.scenario, strategy).result
  })
}

describe.each(['cast-arm', 'jar-lid', 'tray-film'])('the gains on the bench of %s', (id) => {
  it('are judged by the worst of three runs and of all working points', () => {
    const scenario = preset(id)
    const { tune, well } = jobOf(scenario)
    const { present } = tuneGains(scenario, OPTIONS, any).next().value!
    const runs = three(id, scenario, OPTIONS)
    expect(runs.map(({ verdict }) => verdict)).toEqual([well, well, well])
    const figures = (key: string) => runs.map(({ metrics }) => metrics[key]!)
    expect(present.time).toBe(Math.max(...figures(tune.time as string)))
    expect(present.peak).toBe(Math.max(...figures(tune.peak as string)))
    expect(present.settled).toBe(Math.min(...figures(tune.settled as string)))
    expect(present.spare).toBe(Math.min(...tune.spare.flatMap((key) => figures(key as string))))
    const { loops } = analyseLoops(scenario, { loops: ['position'], spread: 0.3 })
    expect(present.phaseMargin).toBe(Math.min(...loops.map(({ margins }) => margins!.phaseMargin ?? 180)))
    expect(present.peakSensitivity).toBe(Math.max(...loops.map(({ margins }) => margins!.peakSensitivity)))
  })
})

it('finds gains of a closure that tighten sooner, by independent runs and analysis', () => {
  const scenario = preset('jar-lid')
  const candidates = [...tuneGains(scenario, OPTIONS, any)]
  const { present } = candidates[0]!
  const best = bestOf(
    candidates.map(({ candidate }) => candidate),
    'time',
  )!
  expect(present.sound).toBe(true)
  expect(best.time!).toBeLessThan(present.time!)
  const tuned = editScenario(scenario, best.edits)
  if (!tuned.ok) throw new Error('refused')
  for (const { verdict, metrics } of three('jar-lid', tuned.scenario, OPTIONS)) {
    expect(verdict).toBe('tight')
    expect(metrics.capTime!).toBeLessThanOrEqual(best.time! + 1e-12)
  }
  for (const { stable, margins } of analyseLoops(tuned.scenario, { loops: ['position'], spread: 0.3 }).loops) {
    expect(stable).toBe(true)
    expect(margins!.phaseMargin ?? 180).toBeGreaterThanOrEqual(45)
  }
})

it('a bushing without a shoulder is judged by its depth, whatever force it takes', () => {
  // A screw that runs easily: the clamp means more than the joint ever takes, and the way ends at its depth.
  const easy = editScenario(preset('lid-hinge'), [{ path: 'actuator.transmission.threadFriction', value: 0.06 }])
  if (!easy.ok) throw new Error('refused')
  const { present } = tuneGains(easy.scenario, { ...OPTIONS, phaseMargin: 30, peakSensitivity: 3 }, any).next().value!
  expect(present).toMatchObject({ sound: true, miss: null })
  const { least } = strategyOf('current-clamp').forceOf(easy.scenario)
  expect(present.settled!).toBeLessThan(0.9 * least)
})

it('says in the words of the job what a set of gains misses', () => {
  const loose = { kind: 'part', job: 'cap', part: 'softest', verdict: 'loose' } as const
  expect(missWords(loose)).toBe('softest seat loose')
  const weak = { kind: 'force', job: 'cap', part: 'stiffest', value: 2, wanted: 3 } as const
  expect(inPlainSpaces(missWhy(weak, SI))).toBe(
    'stiffest seat tightened too weakly, with 2 N·m where at least 3 N·m are wanted',
  )
  const late = { kind: 'time', job: 'web', part: 'nominal', value: null } as const
  expect(missWhy(late, SI)).toBe('nominal web pulled too late, the tension does not settle')
  expect(missWords({ kind: 'spare', job: 'press', part: 'softest', value: 0.1 })).toBe('margin of the softest frame')
})
