/** A new job holds what was told of it and the defaults of the format, nothing else. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fieldAt } from '../../../app/read/scenario/walk.ts'
import { run } from '../../../sim/cli/core.ts'
import {
  type ActuatorKind,
  type Answers,
  allTold,
  axesFor,
  BLANK,
  checkScenario,
  edgesAsked,
  faultIn,
  faultLine,
  JOB_SCHEMAS,
  type JobId,
  jobAsked,
  jobOf,
  NEW_JOBS,
  suggestedEffort,
  unsound,
  workAsked,
} from '../../../sim/index.ts'
import { strategiesOn } from '../../../sim/strategy/index.ts'

/** Jobs that are tried here. */
type Tried = 'grip' | 'press' | 'cap' | 'web'
const IDS: Tried[] = ['grip', 'press', 'cap', 'web']

/** Standard gravity [m/s²], which the simulator rounds to 9.81. */
const G = 9.81

/** All without which there is no such job, and an axis that suits it. */
const LEAST: Record<Tried, Answers> = {
  grip: {
    ...BLANK,
    figures: { 'part.width': 0.08, 'part.mass': 0.9, 'jaws.friction.static': 0.45 },
    choices: { arm: 'still' },
    axis: axesFor('grip')[0]!.id,
  },
  press: {
    ...BLANK,
    figures: {
      'bushing.diameter': 0.012,
      'bushing.length': 0.012,
      'bushing.interference': 1e-5,
      'bore.outerDiameter': 0.024,
    },
    choices: { end: 'shoulder' },
    axis: 'press-ball-16x5',
  },
  cap: {
    ...BLANK,
    figures: {
      'closure.meanDiameter': 0.06,
      'closure.lead': 0.00423,
      'window.torque.least': 2.82,
      'window.torque.most': 4.86,
    },
    axis: 'spindle-60-gear-5',
  },
  web: {
    ...BLANK,
    figures: {
      'web.width': 0.4,
      'web.thickness': 7e-5,
      'span.length': 1.5,
      'line.ramps[0].speed': 2,
      'roll.radius': 0.05,
      'window.least': 40,
      'window.most': 85,
    },
    choices: { kind: 'winds' },
    axis: 'spindle-60-gear-5',
  },
}

const telling = (job: Tried, figures: Answers['figures'], rest: Partial<Answers> = {}): Answers => ({
  ...LEAST[job],
  ...rest,
  figures: { ...LEAST[job].figures, ...figures },
})

function made(job: JobId, answers: Answers) {
  const asked = jobAsked(job, answers)
  if (!asked?.ok) throw new Error(JSON.stringify(asked))
  return asked.scenario
}

const verdicts = (scenario: ReturnType<typeof made>) =>
  strategiesOn(jobOf(scenario)).map(({ id }) => ({ id, ...run(scenario, id).result }))

describe.each(IDS)('a new job: %s', (job) => {
  const { steps } = NEW_JOBS[job]
  const kind = Object.keys(JOB_SCHEMAS[job])[0] as ActuatorKind

  it('asks only for quantities that the format has, with a note, a unit and a usual range', () => {
    for (const { path } of steps.flatMap(({ figures }) => figures))
      expect(fieldAt(kind, path, job), path).toMatchObject({
        kind: 'quantity',
        schema: { description: expect.stringMatching(/./), unit: expect.any(String), usual: expect.any(Array) },
      })
  })

  it('tells only of paths that the format has', () => {
    for (const path of NEW_JOBS[job].assumed(BLANK)) expect(fieldAt(kind, path, job), path).toBeDefined()
  })

  it('starts blank, with no window and no scenario', () => {
    expect(allTold(job, BLANK)).toBe(false)
    expect(edgesAsked(job, BLANK)).toEqual({ least: null, most: null })
    expect(jobAsked(job, BLANK)).toBeNull()
  })

  it('needs each of its needed figures and choices', () => {
    expect(allTold(job, LEAST[job])).toBe(true)
    for (const id of Object.keys(LEAST[job].figures)) expect(allTold(job, telling(job, { [id]: null })), id).toBe(false)
    for (const id of Object.keys(LEAST[job].choices))
      expect(allTold(job, telling(job, {}, { choices: { [id]: undefined } })), id).toBe(false)
  })

  it('is a scenario of its own job that the format takes, done well by every strategy with sound loops', () => {
    const scenario = made(job, { ...LEAST[job], name: ' First try ' })
    expect(scenario).toMatchObject({ job, name: 'First try', notes: '' })
    expect(checkScenario(scenario)).toEqual({ ok: true, scenario })
    for (const result of verdicts(scenario)) expect(result.verdict, result.id).toBe(jobOf(scenario).well)
    expect(unsound(scenario)).toEqual([])
  })

  it('is set to the wanted effort on any axis that can do the job', () => {
    const wanted = suggestedEffort(edgesAsked(job, LEAST[job]))!
    for (const { id } of axesFor(job)) {
      const scenario = made(job, { ...LEAST[job], axis: id })
      const sensed = strategiesOn(jobOf(scenario)).find((each) => each.sensed)!
      expect(sensed.forceOf(scenario).expected / wanted, id).toBeCloseTo(1, 2)
    }
  }, 60_000)
})

describe('a part to be held', () => {
  it('has its window as soon as one can be worked out', () => {
    const figures = { 'part.markForce': 60 }
    expect(edgesAsked('grip', { ...BLANK, figures })).toEqual({ least: null, most: 60 })
    expect(edgesAsked('grip', { ...BLANK, figures: { ...figures, 'part.mass': 0.9 } }).least, 'mass alone').toBeNull()
    const told = { ...figures, 'part.mass': 0.9, 'jaws.friction.static': 0.4 }
    const least = (rest: Partial<Answers>, more = {}) =>
      edgesAsked('grip', { ...BLANK, ...rest, figures: { ...told, ...more } }).least!
    // Closed form: two contacts carry the weight by friction, m·g/(2μ).
    expect(least({}) / ((0.9 * G) / 0.8)).toBeCloseTo(1, 3)
    const moves = { choices: { arm: 'moves' } }
    expect(least(moves, { up: 6 }) / ((0.9 * (G + 6)) / 0.8)).toBeCloseTo(1, 3)
    expect(least(moves, { across: 8 }) / ((0.9 * Math.hypot(G, 8)) / 0.8)).toBeCloseTo(1, 3)
    expect(least({ choices: { arm: 'still' } }, { up: 6 }) / ((0.9 * G) / 0.8), 'asked no more').toBeCloseTo(1, 3)
  })

  it('is moved one way after the other', () => {
    const moves = telling('grip', { up: 4, across: 6, along: 3 }, { choices: { arm: 'moves' } })
    expect(made('grip', moves).arm.moves.map(({ axis }) => axis)).toEqual(['up', 'across', 'along'])
    expect(made('grip', moves).jaws.opening).toBeCloseTo(0.1, 12)
    expect(allTold('grip', telling('grip', {}, { choices: { arm: 'moves' } })), 'no way is told').toBe(false)
  })
})

describe('the window of a new job', () => {
  it('lies where it was asked for: a closure and a web', () => {
    expect(edgesAsked('cap', LEAST.cap)).toEqual({ least: 2.82, most: 4.86 })
    expect(edgesAsked('cap', telling('cap', { 'closure.stripTorque': 4 }))).toEqual({ least: 2.82, most: 4 })
    expect(edgesAsked('web', LEAST.web)).toEqual({ least: 40, most: 85 })
    expect(edgesAsked('web', telling('web', { 'web.breakTension': 70 }))).toEqual({ least: 40, most: 70 })
  })

  it('of a bushing begins above the force that slides it home', () => {
    // Lamé for two rings of the default bronze and aluminium, worked out apart from the simulator (Timoshenko, Strength of Materials II).
    const [b, a, c, u] = [0.006, 0.004, 0.012, 1e-5]
    const ring = (ratio: number) => (1 + ratio ** 2) / (1 - ratio ** 2)
    const give = (b / 1.05e11) * (ring(a / b) - 0.34) + (b / 7e10) * (ring(b / c) + 0.33)
    const slides = 0.08 * (u / 2 / give) * Math.PI * 2 * b * 0.012
    const { least } = edgesAsked('press', LEAST.press)
    expect(least! / slides).toBeGreaterThan(1.1)
    expect(least! / slides).toBeLessThan(1.35)
    expect(edgesAsked('press', telling('press', { 'window.seat.least': 900, 'window.seat.most': 1500 }))).toEqual({
      least: 900,
      most: 1500,
    })
  })

  it('suggests its middle, or what lies off the edge that there is', () => {
    expect(suggestedEffort({ least: 20, most: 60 })).toBe(40)
    expect(suggestedEffort({ least: 20, most: null })).toBe(30)
    expect(suggestedEffort({ least: null, most: 60 })).toBe(30)
    expect(suggestedEffort({ least: null, most: null })).toBeNull()
  })
})

describe('nonsense', () => {
  it.each<[Tried, Answers['figures'], string]>([
    ['press', { 'bore.outerDiameter': 0.01 }, 'bore.outerDiameter'],
    ['press', { 'bushing.innerDiameter': 0.013 }, 'bushing.innerDiameter'],
    ['press', { 'window.seat.least': 2000, 'window.seat.most': 1000 }, 'window.seat'],
    ['cap', { 'window.torque.most': 1 }, 'window.torque'],
    ['cap', { 'closure.lead': 0.2, 'closure.threadFriction': 1.5 }, 'closure.threadFriction'],
    ['web', { 'window.most': 30 }, 'window.most'],
    ['web', { 'roll.coreRadius': 0.06 }, 'roll.radius'],
  ])('%s with %j is refused at %s', (job, figures, path) => {
    const asked = jobAsked(job, telling(job, figures))
    expect(asked).toMatchObject({ ok: false })
    if (asked && !asked.ok) expect(asked.faults.map((fault) => fault.path)).toContain(path)
  })

  it('is told in the reader’s units', () => {
    const asked = jobAsked('cap', telling('cap', { 'window.torque.most': 1 }))
    const fault = asked?.ok === false ? asked.faults[0]! : null
    expect(faultLine(faultIn(fault!, made('cap', LEAST.cap), 'us'))).toMatch(
      /8\.851.lbf·in.*least torque of 24\.96.lbf·in/,
    )
  })
})

it('a bushing without a shoulder comes to its depth by the way of the ram', () => {
  const scenario = made('press', telling('press', {}, { choices: { end: 'depth' } }))
  for (const { id, verdict } of verdicts(scenario)) if (id !== 'sensed-force') expect(verdict, id).toBe('seated')
})

/** Ranges in which a person of the trade answers [SI]. */
const SENSIBLE: Record<Tried, Record<string, [number, number]>> = {
  grip: { 'part.width': [0.01, 0.2], 'part.mass': [0.02, 2], 'jaws.friction.static': [0.1, 0.9] },
  press: {
    'bushing.diameter': [0.005, 0.03],
    'bushing.length': [0.005, 0.03],
    'bushing.interference': [2e-6, 3e-5],
    'bore.outerDiameter': [0.04, 0.1],
  },
  cap: {
    'closure.meanDiameter': [0.02, 0.1],
    'closure.lead': [0.002, 0.008],
    'window.torque.least': [0.5, 3],
    'window.torque.most': [3.5, 6],
  },
  web: {
    'web.width': [0.05, 1],
    'web.thickness': [2e-5, 2e-4],
    'span.length': [0.5, 5],
    'line.ramps[0].speed': [0.1, 5],
    'roll.radius': [0.03, 0.3],
    'window.least': [10, 100],
    'window.most': [120, 400],
  },
}

it.each(IDS)(
  'sensible answers make a scenario of the format, whose window is the one that was told: %s',
  (job) => {
    const figures = Object.fromEntries(
      Object.entries(SENSIBLE[job]).map(([id, [min, max]]) => [id, fc.double({ min, max, noNaN: true })]),
    )
    const choices = fc.record(
      Object.fromEntries(
        NEW_JOBS[job].steps
          .flatMap((step) => step.choices ?? [])
          .map(({ id, options }) => [id, fc.constantFrom(...options.map(({ value }) => value))]),
      ),
    )
    fc.assert(
      fc.property(fc.record(figures), choices, (told, chosen) => {
        const answers = { ...LEAST[job], figures: told, choices: chosen }
        const work = workAsked(job, answers)
        expect(work).toMatchObject({ ok: true })
        if (!work.ok) return
        const scenario = made(job, answers)
        expect(checkScenario(scenario)).toEqual({ ok: true, scenario })
        expect(NEW_JOBS[job].edges(scenario, answers), 'the axis moves no edge').toEqual(edgesAsked(job, answers))
      }),
      { numRuns: 25, seed: 7 },
    )
  },
  120_000,
)
