import { describe, expect, it } from 'vitest'
import { commandFor, SLIDES, slideAt, slidesFor, within } from '../../../../app/views/present/slides.ts'

const last = SLIDES.length - 1
const grip = SLIDES.findIndex(({ id }) => id === 'grip')

describe('slides', () => {
  it('begin with the job and play the grip before they judge it', () => {
    const order = SLIDES.map(({ id }) => id)
    expect(order[0]).toBe('job')
    expect(order.indexOf('grip')).toBeLessThan(order.indexOf('outcome'))
    expect(within(-1)).toBe(0)
    expect(slideAt(99)).toBe(SLIDES[last])
  })

  it('show many parts and two axes where there are any, and end with why', () => {
    const ids = (paired: boolean, varies: boolean) => slidesFor({ paired, varies }).map(({ id }) => id)
    expect(ids(false, false)).toEqual(SLIDES.map(({ id }) => id))
    expect(ids(false, true)).toEqual(['job', 'grip', 'outcome', 'parts', 'why'])
    expect(ids(true, true)).toEqual(['job', 'grip', 'outcome', 'parts', 'axes', 'why'])
  })

  it('are walked to the end and back by one key each', () => {
    const walk = (key: string, from: number) => {
      const seen = [from]
      for (let n = 0; n < 20; n++) {
        const command = commandFor(key, false, { slide: seen.at(-1)!, still: false })
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
    const where = { slide: grip, still: false }
    expect(commandFor('Home', false, where)).toEqual({ kind: 'go', slide: 0 })
    expect(commandFor('End', false, where)).toEqual({ kind: 'go', slide: last })
    expect(commandFor('Escape', false, where)).toEqual({ kind: 'leave' })
    expect(commandFor('x', false, where)).toBeNull()
  })

  it('give space to the play, or to the next slide where there is none', () => {
    expect(commandFor(' ', false, { slide: grip, still: false })).toEqual({ kind: 'play' })
    expect(commandFor(' ', false, { slide: 0, still: false })).toEqual({ kind: 'go', slide: 1 })
    expect(commandFor(' ', true, { slide: last, still: false })).toEqual({ kind: 'go', slide: last - 1 })
    expect(commandFor(' ', false, { slide: last, still: false })).toBeNull()
  })

  it('walk through the instants of the grip where nothing plays', () => {
    const where = { slide: grip, still: true }
    expect(commandFor(' ', false, where)).toEqual({ kind: 'step', by: 1, slide: grip + 1 })
    expect(commandFor('ArrowLeft', false, where)).toEqual({ kind: 'step', by: -1, slide: grip - 1 })
    expect(commandFor('ArrowDown', false, { slide: grip, still: false })).toEqual({ kind: 'step', by: 1, slide: null })
    expect(commandFor('ArrowDown', false, { slide: 0, still: true })).toBeNull()
  })
})
