import { describe, expect, it } from 'vitest'
import { buildLens, flatLens } from '../../../../app/ui/timeLens.ts'
import { CLIP, knownEncodings } from '../../../../app/views/present/clip/encode.ts'
import { clipTimes, RATE } from '../../../../app/views/present/clip/times.ts'

describe('frames of a clip', () => {
  const lens = buildLens({ duration: 1.5, contacts: [0.23], moves: [{ start: 0.7, end: 1.1 }] })
  const times = clipTimes(lens)

  it('begin at the start, end at the end, and never go back', () => {
    expect(times[0]).toBe(0)
    expect(times.at(-1)).toBe(1.5)
    for (let i = 1; i < times.length; i++) expect(times[i]!).toBeGreaterThanOrEqual(times[i - 1]!)
  })

  it('move on as the play does: each by one frame of play, however long that is in the run', () => {
    const moving = times.filter((time) => time > 0 && time < 1.5)
    for (let i = 1; i < moving.length; i++) {
      const step = (lens.toDisplay(moving[i]!) - lens.toDisplay(moving[i - 1]!)) * lens.seconds
      expect(Math.abs(step * RATE - 1)).toBeLessThan(0.005) // the lens is tabulated
    }
    expect(Math.abs(times.length / RATE - lens.seconds - 3)).toBeLessThan(1 / RATE) // a frame more or less
  })

  it('are many around contact', () => {
    const around = times.filter((time) => time > 0.22 && time < 0.29).length
    expect(around).toBeGreaterThan(10 * 0.07 * RATE)
  })

  it('run in real time without a lens', () => {
    expect(clipTimes(flatLens(2)).length).toBe(5 * RATE)
  })
})

describe('encodings', () => {
  it('are those that the browser can make at the size of the clip, the most widely played first', async () => {
    const asked: unknown[] = []
    const all = await knownEncodings(async (codec, size) => {
      asked.push(size)
      return codec !== 'vp9'
    })
    expect(all.map(({ codec }) => codec)).toEqual(['avc', 'vp8'])
    expect(asked).toEqual([CLIP, CLIP, CLIP])
  })

  it('are none where the browser refuses or has no encoder', async () => {
    expect(await knownEncodings(() => Promise.reject(new Error('no')))).toEqual([])
    expect(await knownEncodings()).toEqual([])
  })
})
