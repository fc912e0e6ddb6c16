import { describe, expect, it } from 'vitest'
import { commandFor, slideAt, slidesFor, within } from '../../../../app/views/present/slides.ts'

import { JOBS, type JobId, PRESETS } from '../../../../sim/index.ts'

const { scenario } = PRESETS[0]!
const SLIDES = slidesFor({ scenario, paired: false, varies: false })
const last = SLIDES.length - 1
const run = SLIDES.findIndex(({ id }) => id === 'run')

describe('slides', () => {
  it('begin with the job and play the run before they judge it', () => {
    const order = SLIDES.map(({ id }) => id)
    expect(order[0]).toBe('job')
    expect(order.indexOf('run')).toBeLessThan(order.indexOf('outcome'))
    expect(within(-1, SLIDES)).toBe(0)
    expect(slideAt(99, SLIDES)).toBe(SLIDES[last])
  })

  it('show many parts and two axes where there are any, and end with why', () => {
    const ids = (paired: boolean, varies: boolean) => slidesFor({ scenario, paired, varies }).map(({ id }) => id)
    expect(ids(false, false)).toEqual(SLIDES.map(({ id }) => id))
    expect(ids(false, true)).toEqual(['job', 'run', 'outcome', 'parts', 'why'])
    expect(ids(true, true)).toEqual(['job', 'run', 'outcome', 'parts', 'axes', 'why'])
  })

  it('are named by the job', () => {
    const titles = (job: string) =>
      slidesFor({ scenario: { job: job as JobId }, paired: false, varies: true }).map(({ title }) => title)
    expect(titles('press')).toEqual(['The job', 'The press', 'What came of it', 'Many bushings', 'Why'])
    expect(new Set(Object.keys(JOBS).map((job) => titles(job).join())).size).toBe(Object.keys(JOBS).length)
  })

  it('are walked to the end and back by one key each', () => {
    const walk = (key: string, from: number) => {
      const seen = [from]
      for (let n = 0; n < 20; n++) {
        const command = commandFor(key, false, { slide: seen.at(-1)!, still: false, slides: SLIDES })
        if (command?.kind !== 'go') break
        seen.push(command.slide)
      }
      return seen
    }
    const all = SLIDES.map((_, i) => i)
    for (const key of ['ArrowRight', 'PageDown']) expect(walk(key, 0)).toEqual(all)
    for (const key of ['ArrowLeft', 'PageUp']) expect(walk(key, last)).toEqual([...all].reverse())
  })

  it('jump to the ends and leave', () => {
    const where = { slide: run, still: false, slides: SLIDES }
    expect(commandFor('Home', false, where)).toEqual({ kind: 'go', slide: 0 })
    expect(commandFor('End', false, where)).toEqual({ kind: 'go', slide: last })
    expect(commandFor('Escape', false, where)).toEqual({ kind: 'leave' })
    expect(commandFor('x', false, where)).toBeNull()
  })

  it('give space to the play, or to the next slide where there is none', () => {
    expect(commandFor(' ', false, { slide: run, still: false, slides: SLIDES })).toEqual({ kind: 'play' })
    expect(commandFor(' ', false, { slide: 0, still: false, slides: SLIDES })).toEqual({ kind: 'go', slide: 1 })
    expect(commandFor(' ', true, { slide: last, still: false, slides: SLIDES })).toEqual({
      kind: 'go',
      slide: last - 1,
    })
    expect(commandFor(' ', false, { slide: last, still: false, slides: SLIDES })).toBeNull()
  })

  it('walk through the instants of the run where nothing plays', () => {
    const where = { slide: run, still: true, slides: SLIDES }
    expect(commandFor(' ', false, where)).toEqual({ kind: 'step', by: 1, slide: run + 1 })
    expect(commandFor('ArrowLeft', false, where)).toEqual({ kind: 'step', by: -1, slide: run - 1 })
    expect(commandFor('ArrowDown', false, { slide: run, still: false, slides: SLIDES })).toEqual({
      kind: 'step',
      by: 1,
      slide: null,
    })
    expect(commandFor('ArrowDown', false, { slide: 0, still: true, slides: SLIDES })).toBeNull()
  })
})
