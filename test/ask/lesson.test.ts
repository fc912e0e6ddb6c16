import { describe, expect, it } from 'vitest'
import { drawing } from '../../sim/ask/spread/draw.ts'
import { exactInterval } from '../../sim/ask/spread/intervals.ts'
import { checkLesson, judgeLesson, type Lesson, runLesson, simulateGrip, sliderValues } from '../../sim/index.ts'
import { remembered } from '../grip/remembered.ts'

/** The shortest lesson there is. */
const plain = {
  title: 'A lesson',
  minutes: 3,
  text: ['The pot weighs {scenario.part.mass}.'],
  preset: 'teapot',
  runs: [{ id: 'slow', label: 'Slow', strategy: 'current-clamp', set: { 'approach.speed': 0.03 } }],
  question: {
    kind: 'number',
    ask: 'How high is the peak?',
    label: 'Peak',
    figure: 'slow.peakForce',
    tolerance: 0.1,
    min: 1,
    max: 100,
    start: 10,
  },
  hint: 'Look at the speed.',
  right: 'It is {expected}.',
  wrong: 'It is {expected}, off by {off}.',
  explanation: ['It is {slow.peakForce}.'],
}

const slider = {
  ...plain,
  right: 'Done.',
  wrong: 'Try {nearest}.',
  question: {
    kind: 'slider',
    ask: 'Hold it.',
    path: 'approach.speed',
    min: 0.03,
    max: 0.1,
    start: 0.1,
    goal: [{ figure: 'slow.peakForce', below: 60 }],
  },
}

const choice = {
  ...plain,
  right: 'Yes.',
  wrong: 'No.',
  question: {
    kind: 'choice',
    ask: 'Does it hold?',
    choices: [
      { text: 'Yes', when: [{ figure: 'slow.verdict', is: 'held' }], say: 'It does.' },
      { text: 'No', when: [{ figure: 'slow.verdict', is: 'crushed' }], say: 'It does not.' },
    ],
  },
}

const sound = (input: unknown): Lesson => {
  const checked = checkLesson(input)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.lesson
}

const faults = (input: unknown) => {
  const checked = checkLesson(input)
  return checked.ok ? [] : checked.faults.map(({ path }) => path)
}

describe('a lesson file', () => {
  it('is refused by path, every fault at once', () => {
    const broken = {
      ...plain,
      minutes: 0,
      preset: 'cannon',
      colour: 'blue',
      runs: [{ id: 'Slow', label: 'Slow', strategy: 'glue' }],
      question: { ...plain.question, tolerance: 2, min: 'little' },
    }
    expect(faults(broken).sort()).toEqual([
      'colour',
      'minutes',
      'preset',
      'question.min',
      'question.tolerance',
      'runs[0].id',
      'runs[0].strategy',
    ])
  })

  it('says what is allowed', () => {
    const checked = checkLesson({ ...plain, preset: 'cannon', text: [] })
    if (checked.ok) throw new Error('not refused')
    const said = Object.fromEntries(checked.faults.map(({ path, allowed }) => [path, allowed]))
    expect(said.preset).toContain('"teapot"')
    expect(said.text).toBe('a list of 1 to 8 entries')
  })

  it.each([
    ['', 'no object', 7],
    ['question.kind', 'an unknown kind', { ...plain, question: { kind: 'riddle' } }],
    ['set.approach.speed', 'a scenario that is refused', { ...plain, set: { 'approach.speed': -1 } }],
    ['set.approach.colour', 'an unknown key', { ...plain, set: { 'approach.colour': 'blue' } }],
    [
      'runs[0].set.part.mass',
      'a run that is refused',
      { ...plain, runs: [{ ...plain.runs[0], set: { 'part.mass': 0 } }] },
    ],
    ['runs[1].id', 'an id twice', { ...plain, runs: [plain.runs[0], { ...plain.runs[0], label: 'Other' }] }],
    ['runs[1].label', 'a label twice', { ...plain, runs: [plain.runs[0], { ...plain.runs[0], id: 'other' }] }],
    ['runs[0].id', 'an id that means something else', { ...plain, runs: [{ ...plain.runs[0], id: 'scenario' }] }],
    ['question.figure', 'an unknown figure', { ...plain, question: { ...plain.question, figure: 'slow.beauty' } }],
    ['question.figure', 'a word as a number', { ...plain, question: { ...plain.question, figure: 'slow.verdict' } }],
    ['question.start', 'a start outside', { ...plain, question: { ...plain.question, start: 1000 } }],
    ['question.max', 'an empty range', { ...plain, question: { ...plain.question, max: 1 } }],
    ['explanation[0]', 'an unknown placeholder', { ...plain, explanation: ['{slow.beauty}'] }],
    ['text[0]', 'an answer given away', { ...plain, text: ['It peaks at {slow.peakForce}.'] }],
    ['question.ask', 'an answer in the question', { ...plain, question: { ...plain.question, ask: '{expected}?' } }],
    ['right', 'a figure of another kind of question', { ...slider, right: '{expected}' }],
    ['question.path', 'no quantity', { ...slider, question: { ...slider.question, path: 'part' } }],
    ['question.min', 'a slider beyond what is allowed', { ...slider, question: { ...slider.question, min: -1 } }],
    [
      'question.goal[0]',
      'no bound',
      { ...slider, question: { ...slider.question, goal: [{ figure: 'slow.peakForce' }] } },
    ],
    ['runs', 'nothing for the slider', { ...slider, runs: [{ ...slider.runs[0], given: true }] }],
    [
      'question.choices[0].when[0].figure',
      'a number as a word',
      {
        ...choice,
        question: {
          ...choice.question,
          choices: [
            { ...choice.question.choices[0], when: [{ figure: 'slow.peakForce', is: 'held' }] },
            choice.question.choices[1],
          ],
        },
      },
    ],
    [
      'figures[0].of[1]',
      'a figure made of nothing',
      { ...plain, figures: [{ id: 'a', label: 'A', take: 'ratio', of: ['slow.peakForce', 'b'] }] },
    ],
    [
      'figures[0].of[0]',
      'a figure made of itself',
      { ...plain, figures: [{ id: 'a', label: 'A', take: 'ratio', of: ['a', 'slow.peakForce'] }] },
    ],
  ])('is refused at "%s": %s', (path, _, input) => {
    expect(faults(input)).toContain(path)
  })

  it('takes a bound of its question as a figure', () => {
    expect(faults({ ...slider, question: { ...slider.question, ask: 'Below {question.goal[0].below}.' } })).toEqual([])
    expect(faults({ ...slider, question: { ...slider.question, ask: 'Below {question.goal[1].below}.' } })).toEqual([
      'question.ask',
    ])
  })
})

describe('judging', () => {
  it('a number by the run itself', () => {
    const lesson = sound(plain)
    const items = [...runLesson(lesson, 10)]
    const run = items.find((item) => item.kind === 'run')!.run
    const peak = simulateGrip(run.scenario, 'current-clamp').result.metrics.peakForce!
    expect(run.scenario.approach.speed).toBe(0.03)
    expect(judgeLesson(lesson, 10)).toMatchObject({ right: false, expected: { value: peak, unit: 'N' } })
    expect(judgeLesson(lesson, 10).off).toBeCloseTo(10 / peak - 1, 12)
    expect(judgeLesson(lesson, 1.09 * peak).right).toBe(true)
    expect(judgeLesson(lesson, 0.91 * peak).right).toBe(true)
    expect(judgeLesson(lesson, 1.11 * peak).right).toBe(false)
  })

  it('a choice by which conditions the runs meet', () => {
    const lesson = sound(choice)
    expect(judgeLesson(lesson, 0)).toMatchObject({ right: true, rightChoice: 0 })
    expect(judgeLesson(lesson, 1)).toMatchObject({ right: false, rightChoice: 0 })
  })

  it('and refuses a choice that the runs do not decide', () => {
    const [first] = choice.question.choices
    const twice = { ...choice, question: { ...choice.question, choices: [first, { ...first, text: 'Yes again' }] } }
    expect(() => judgeLesson(sound(twice), 0)).toThrow('2 of its choices are right')
  })

  it('a slider by its goal, with the nearest setting that meets it', () => {
    const lesson = sound(slider)
    const wrong = judgeLesson(lesson, 0.1, remembered)
    expect(wrong.right).toBe(false)
    expect(wrong.goals[0]).toMatchObject({ met: false, below: { value: 60, unit: 'N' } })
    expect(wrong.nearest).not.toBeNull()
    const near = judgeLesson(lesson, wrong.nearest!, remembered)
    expect(near).toMatchObject({ right: true, nearest: null })
    expect(near.goals[0]!.figure.value).toBeLessThan(60)
    const nearer = sliderValues(slider.question).find((value) => value > wrong.nearest!)!
    expect(judgeLesson(lesson, nearer, remembered).right, 'a nearer setting').toBe(false)
  })

  it('tells only what is given before the answer', () => {
    const given = { ...plain.runs[0], id: 'given', label: 'Given', given: true }
    const lesson = sound({ ...plain, runs: [given, plain.runs[0]], text: ['{given.peakForce}'] })
    const items = [...runLesson(lesson, null)]
    expect(items.map((item) => (item.kind === 'run' ? item.run.id : item.kind))).toEqual(['given', 'told'])
    expect(items.at(-1)).toMatchObject({ asked: { unit: 'N', value: null } })
    expect(Object.keys((items.at(-1) as { figures: object }).figures)).toEqual(['given.peakForce'])
  })
})

describe('a run of many parts', () => {
  const varies = [{ path: 'part.crackForce', law: 'lognormal', factor: 1.25 }]
  const short = { 'run.duration': 0.5, 'arm.moves': [], 'arm.lift': 0.4 }
  const many = {
    ...plain,
    set: { ...short, 'spread.varies': varies },
    runs: [{ id: 'many', label: 'Many', strategy: 'current-clamp', parts: 20 }],
    question: { ...plain.question, figure: 'many.parts.held', min: 0, max: 1, start: 1 },
    right: 'Of {many.parts.count} hold {expected}, {many.parts.low} to {many.parts.high}.',
    wrong: '{many.parts.failed} fail.',
    explanation: ['So it is.'],
  }

  it('has the share that hold, with exact limits (Clopper and Pearson 1934)', () => {
    const checked = checkLesson(many)
    if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
    const run = [...runLesson(checked.lesson, 1, remembered)].find((item) => item.kind === 'run')!.run
    const draw = drawing(run.scenario, { sampling: 'random', seed: run.scenario.run.seed })
    const held = Array.from(
      { length: 20 },
      (_, index) => remembered(draw(index).scenario, 'current-clamp').result.verdict,
    )
    const count = held.filter((verdict) => verdict === 'held').length
    expect(run.parts).toMatchObject({ count, share: count / 20, ...exactInterval(count, 20) })
    const { figures, expected } = judgeLesson(checked.lesson, 1, remembered)
    expect(expected!.value).toBe(count / 20)
    expect(figures['many.parts.failed']!.value).toBeCloseTo(1 - count / 20, 12)
    expect(figures['many.parts.count']!.value).toBe(20)
  })

  it('is refused where nothing varies, and its figures where a run has no parts', () => {
    const faults = (lesson: unknown) => {
      const checked = checkLesson(lesson)
      return checked.ok ? [] : checked.faults.map(({ path }) => path)
    }
    expect(faults({ ...many, set: short })).toEqual(['runs[0].parts'])
    expect(faults({ ...plain, explanation: ['{slow.parts.held}'] })).toEqual(['explanation[0]'])
    expect(faults({ ...many, explanation: ['{many.parts.nothing}'] })).toEqual(['explanation[0]'])
  })
})
