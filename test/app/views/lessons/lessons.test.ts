import { describe, expect, it } from 'vitest'
import { FAULTY, LESSONS } from '../../../../app/views/lessons/lessons.ts'
import { judgeLesson, lessonFigureText, lessonText, runLesson, sliderValues } from '../../../../sim/index.ts'
import { remembered } from '../../../grip/remembered.ts'

/** Words of a lesson that stand before the answer and after it. */
const texts = (lesson: (typeof LESSONS)[number]['lesson']) => {
  const { question } = lesson
  const choices = question.kind === 'choice' ? question.choices : []
  const before = [...lesson.text, lesson.caution ?? '', question.ask, lesson.hint, ...choices.map(({ text }) => text)]
  const after = [lesson.right, lesson.wrong, ...lesson.explanation, ...choices.map(({ say }) => say)]
  return { before: [...before, ...lesson.runs.map(({ label }) => label)], after }
}

describe('the lessons', () => {
  it('are all sound, at least ten, and each has a name of its own', () => {
    expect(FAULTY).toEqual([])
    expect(LESSONS.length).toBeGreaterThanOrEqual(10)
    expect(new Set(LESSONS.map(({ id }) => id)).size).toBe(LESSONS.length)
    expect(new Set(LESSONS.map(({ lesson }) => lesson.title)).size).toBe(LESSONS.length)
  })

  it('use every kind of question', () => {
    expect(new Set(LESSONS.map(({ lesson }) => lesson.question.kind))).toEqual(new Set(['number', 'choice', 'slider']))
  })

  it('warn where a hand can be hurt', () => {
    const warned = LESSONS.filter(({ lesson }) => lesson.caution).map(({ id }) => id)
    expect(warned).toEqual(expect.arrayContaining(['lead', 'power-loss', 'seating']))
  })
})

/** What the words say became of the part. */
const SAID: Record<string, Record<string, string>> = {
  'force-window': { weak: 'dropped', good: 'held', strong: 'crushed' },
  impact: { fast: 'crushed' },
  'threshold-wanders': { soft: 'held', mid: 'held', stiff: 'held' },
  'clamp-stays': { soft: 'held', mid: 'held', stiff: 'held' },
  'friction-lies': { real: 'held', dead: 'held' },
  gauge: { base: 'held', friction: 'held', motor: 'held', gauge: 'held' },
  'wind-up': { wound: 'crushed', without: 'held' },
  relaxation: { position: 'dropped', force: 'held' },
  seating: { slow: 'tight', fast: 'forced' },
  'power-loss': { open: 'dropped', shorted: 'dropped', locking: 'held' },
}

it.each(Object.entries(SAID))('lesson %s: the parts fare as its words say', (id, said) => {
  const { lesson } = LESSONS.find((listed) => listed.id === id)!
  const start = lesson.question.kind === 'choice' ? 0 : lesson.question.start
  const runs = [...runLesson(lesson, start, remembered)].flatMap((item) => (item.kind === 'run' ? [item.run] : []))
  for (const [run, verdict] of Object.entries(said))
    expect(runs.find((each) => each.id === run)!.result.verdict, run).toBe(verdict)
})

describe.each(LESSONS)('lesson $id', ({ lesson }) => {
  const { question } = lesson
  const wrong = question.kind === 'choice' ? 0 : question.start

  it('is decided by its runs, and a wrong answer is judged wrong', () => {
    switch (question.kind) {
      case 'number': {
        const { expected, right } = judgeLesson(lesson, question.start, remembered)
        expect(right).toBe(false)
        expect(expected!.value).toBeGreaterThan(question.min)
        expect(expected!.value).toBeLessThan(question.max)
        expect(judgeLesson(lesson, expected!.value as number, remembered).right).toBe(true)
        break
      }
      case 'choice': {
        const rights = question.choices.filter((_, choice) => judgeLesson(lesson, choice, remembered).right)
        expect(rights).toHaveLength(1)
        break
      }
      case 'slider': {
        expect(judgeLesson(lesson, question.start, remembered).right).toBe(false)
        // Not met at either end, and between them over a stretch that a person can hit.
        const ends = [question.min, question.max].map((end) => judgeLesson(lesson, end, remembered))
        expect(ends.map(({ right }) => right)).toEqual([false, false])
        for (const { nearest } of ends) expect(judgeLesson(lesson, nearest!, remembered).right).toBe(true)
        const [low, high] = ends.map(({ nearest }) => sliderValues(question).indexOf(nearest!))
        expect(high! - low!).toBeGreaterThanOrEqual(3)
      }
    }
  })

  it('fills every placeholder, with a figure, in both systems of units', () => {
    const told = [...runLesson(lesson, null, remembered)].find((item) => item.kind === 'told')!.figures
    const { figures } = judgeLesson(lesson, wrong, remembered)
    const { before, after } = texts(lesson)
    for (const units of ['si', 'us'] as const) {
      expect(before.map((text) => lessonText(text, told, units)).join()).not.toMatch(/[{}]|—|NaN|undefined/)
      expect([...before, ...after].map((text) => lessonText(text, figures, units)).join()).not.toMatch(
        /[{}]|—|NaN|undefined/,
      )
    }
    for (const name of Object.keys(told)) expect(told[name]!.value, name).not.toBeNull()
    // What only a right answer can have may be missing from a wrong one, and is then said to be none.
    for (const [name, { value }] of Object.entries(figures))
      if (question.kind !== 'slider') expect(value, name).not.toBeNull()
  })

  it('types no simulated figure into its prose', () => {
    const { before, after } = texts(lesson)
    for (const text of [...before, ...after])
      expect(text.replace(/\{[^{}]*\}/g, '').replace(/2·\*µ\*|½·/g, '')).not.toMatch(/\d/)
  })
})

describe('words of a figure', () => {
  it('shows figures in the units of the page, parameters as they were typed', () => {
    const force = { label: '', unit: 'N', value: 12.3456, exact: false }
    expect(lessonFigureText(force, 'si')).toBe('12.3\u00a0N')
    expect(lessonFigureText(force, 'us')).toBe('2.78\u00a0lbf')
    expect(lessonFigureText({ ...force, value: 12.5, exact: true }, 'si')).toBe('12.5\u00a0N')
    expect(lessonFigureText({ ...force, value: 12.5, exact: true }, 'us')).toBe('2.81\u00a0lbf')
    expect(lessonFigureText({ ...force, value: null }, 'si')).toBe('none')
    expect(lessonFigureText({ ...force, unit: '1/s', value: 300 }, 'si')).toBe('300 times a second')
    expect(lessonFigureText({ ...force, unit: 'N/m^n', shown: 'N/mm^n', exponent: 1.5, value: 120000 }, 'si')).toMatch(
      /^3\.79\u00a0N\/mm¹·⁵$/,
    )
    expect(lessonFigureText({ ...force, value: 'held' }, 'si')).toBe('held')
  })
})
