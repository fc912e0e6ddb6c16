import { describe, expect, it } from 'vitest'
import { textAt } from '../../app/read/scenario/textAt.ts'
import { fieldAt } from '../../app/read/scenario/walk.ts'
import { run } from '../../sim/cli/core.ts'
import {
  ALL_PRESETS,
  assumedOf,
  inPlainSpaces,
  JOB_SCHEMAS,
  JOBS,
  type JobId,
  jobOf,
  type Scenario,
  shownAs,
  strategiesOn,
  wordingOf,
} from '../../sim/index.ts'
import { metricUnits } from './support.ts'

const IDS = Object.keys(JOBS) as JobId[]
const firstOf = (job: JobId) => ALL_PRESETS.find(({ scenario }) => scenario.job === job)!.scenario

describe('how a job is shown', () => {
  it('names keys that its file has, with some actuator', () => {
    for (const job of IDS) {
      const kinds = Object.keys(JOB_SCHEMAS[job]) as (keyof (typeof JOB_SCHEMAS)[JobId])[]
      const known = (path: string) => kinds.some((kind) => fieldAt(kind, path, job))
      const { work, axis, course, settings } = shownAs({ job }).sheet
      const own = [...work.keys, ...course.keys].map((key) => (typeof key === 'string' ? key : key[0]))
      for (const path of [...own, ...settings, course.list?.path ?? 'run.duration'])
        expect(known(path), `${job}: ${path}`).toBe(true)
      // Those of motors are common to all kinds, of which a job has some.
      const paths = axis.map((key) => (typeof key === 'string' ? key : key[0]))
      for (const path of paths.filter((each) => !each.startsWith('actuator.')))
        expect(known(path), `${job}: ${path}`).toBe(true)
      expect(paths.filter(known).length).toBeGreaterThan(6)
    }
  })

  it('has words of its own for what all jobs have', () => {
    const keys = ['title', 'works', 'effort', 'window', 'below', 'between', 'picture', 'achieves', 'danger'] as const
    for (const key of keys) expect(new Set(IDS.map((job) => shownAs({ job })[key])).size, key).toBe(IDS.length)
  })

  it('says what it takes for granted and what the job is in whole sentences and in the reader’s units', () => {
    for (const { id, scenario } of ALL_PRESETS) {
      const { facts } = shownAs(scenario)
      const said = [
        ...assumedOf(scenario, (path) => textAt(scenario, path, 'us')),
        ...facts(scenario, wordingOf('us')).map(({ name, words }) => `${name}: ${words}.`),
      ]
      for (const sentence of said) {
        expect(sentence, id).toMatch(/^[A-Z].*[^ ]\.$/)
        expect(sentence, id).not.toMatch(/undefined|NaN| {2}| \.|\bof\.|\bby [,;.]/)
        expect(metricUnits(sentence), sentence).toEqual([])
      }
    }
  })

  it('names the harm that comes first', () => {
    const cap = firstOf('cap') as unknown as { closure: object; window: { torque: object } }
    const above = (scenario: unknown) => shownAs(scenario as Scenario).above(scenario as Scenario)
    expect(above(cap)).toBe('is too tight')
    expect(above({ ...cap, closure: { ...cap.closure, stripTorque: 3 } })).toBe('strips')
    const press = firstOf('press') as unknown as { window: object }
    expect(above(press)).toBe('seats too hard')
    expect(above({ ...press, window: { ...press.window, mostForce: 2500 } })).toBe('is forced')
    const web = firstOf('web') as unknown as { web: object }
    expect(above(web)).toBe('stretches')
    expect(above({ ...web, web: { ...web.web, breakTension: 60 } })).toBe('tears')
  })

  it('tells events of a line where they are', () => {
    const web = ALL_PRESETS.find(({ id }) => id === 'tray-film')!.scenario
    // A ramp of 0.6 m/s with 2 m/s² and 20 m/s³ takes 0.6/2 + 2/20 s; closed form.
    expect(shownAs(web).events(web)).toEqual([
      { start: 1.5, end: 1.9, words: 'line speeds up' },
      { start: 2.6, end: 3, words: 'line slows down' },
      { start: 3.6, end: 4, words: 'line speeds up' },
      { start: 4.7, end: expect.closeTo(5.1, 9), words: 'line slows down' },
    ])
  })
})

describe.each([...ALL_PRESETS])('$id as it is shown', ({ scenario }) => {
  const job = jobOf(scenario)
  const results = strategiesOn(job).map(({ id }) => run(scenario, id).result)
  const shown = shownAs(scenario)

  it('has its nearest margin among the phrases on what there is to spare', () => {
    for (const result of results.filter(({ verdict }) => verdict === job.well)) {
      const spare = job.study.spare(scenario, result)
      expect(spare).not.toBeNull()
      const phrases = shown.spare(scenario, result, wordingOf('si')).join(', ')
      expect(phrases).toContain(wordingOf('si').ratio(spare!))
      expect(inPlainSpaces(phrases)).not.toMatch(/null|NaN|Infinity/)
    }
  })

  it('says how it goes on until its verdict is in, which is told within the run', () => {
    const { duration } = scenario.run
    for (const result of results) {
      const wrong = job.moments.wrong(result)
      const told = wrong?.time ?? job.moments.right(scenario, result) ?? duration
      expect(told).toBeGreaterThan(0)
      expect(told).toBeLessThanOrEqual(duration)
      if (result.verdict === job.well) expect(wrong).toBeNull()
      expect(shown.stage(null, 0)).toBe(shown.stage(result, 0))
      const { contactTime, tautTime = null } = result.metrics as Record<string, number | null>
      const begun = Math.max(contactTime ?? duration, tautTime ?? 0) + 1e-6
      expect(shown.stage(result, 0)).not.toBe(shown.stage(result, begun))
      expect(shown.fate(result)).toMatch(/^[a-z]/)
    }
  })
})

describe('when the verdict is in', () => {
  const times = { over: 1, above: 2, below: 3, strip: 4, jam: 5, reached: 6, torn: 7, under: 8, unstable: 9 }
  const wrongOf = (job: JobId, verdict: string, events: object, metrics: object = {}) =>
    JOBS[job].moments.wrong({ verdict, events: { ...events }, metrics } as never)?.time

  it('is when that happened which it tells of', () => {
    expect(wrongOf('press', 'forced', times)).toBe(1)
    expect(wrongOf('press', 'forced', { ...times, over: null, jammedDepth: 0.005 })).toBe(2)
    expect(wrongOf('press', 'forced', { ...times, over: null, jammedDepth: null })).toBeUndefined()
    expect(wrongOf('press', 'tilted', times)).toBe(2)
    expect(wrongOf('press', 'slack', times)).toBe(3)
    expect(wrongOf('press', 'short', times)).toBeUndefined()
    expect(wrongOf('cap', 'stripped', times)).toBe(4)
    expect(wrongOf('cap', 'cross-threaded', times)).toBe(5)
    expect(wrongOf('cap', 'cross-threaded', { ...times, jam: null })).toBe(6)
    expect(wrongOf('cap', 'forced', times)).toBe(1)
    expect(wrongOf('cap', 'loose', times)).toBeUndefined()
    expect(wrongOf('web', 'torn', { ...times, tearingTension: 80 })).toBe(7)
    expect(wrongOf('web', 'stretched', times)).toBe(1)
    expect(wrongOf('web', 'slack', times, { tautTime: 0.5 })).toBe(8)
    expect(wrongOf('web', 'slack', times, { tautTime: null })).toBeUndefined()
    for (const job of IDS) expect(wrongOf(job, 'unstable', times)).toBe(9)
  })
})

describe('a head that creeps before the liner', () => {
  const scenario = firstOf('cap')
  const head = (creepFrom: number, creepSpeed: number) => {
    const approach = { ...scenario.approach, creepFrom, creepSpeed }
    const told = shownAs(scenario).facts({ ...scenario, approach }, wordingOf('si'))
    return told.find(({ name }) => name === 'Head')!.words
  }

  it('is told where there is a zone and it is slower, and only there', () => {
    const { speed } = scenario.approach
    expect(head(1, speed / 2)).toMatch(/before the liner with/)
    for (const [from, creep] of [
      [0, speed / 2],
      [1, speed],
    ] as const)
      expect(head(from, creep)).not.toMatch(/before the liner/)
  })
})
