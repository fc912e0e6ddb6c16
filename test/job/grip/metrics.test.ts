import { describe, expect, it } from 'vitest'
import { METRICS, PRESETS, plainMetric, simulateGrip, worth } from '../../../sim/index.ts'
import { make } from '../../scenario/make.ts'

const teapot = PRESETS[0]!.scenario
const { result } = simulateGrip(teapot, 'current-clamp')

describe('METRICS', () => {
  it('knows every metric of a result once, and the step error', () => {
    const ids = METRICS.map(({ id }) => id)
    expect([...ids].sort()).toEqual([...Object.keys(result.metrics), 'stepError'].sort())
    expect(new Set(METRICS.map(({ label }) => label)).size).toBe(METRICS.length)
  })

  it('says in one sentence how each is computed, and in one why it may be missing', () => {
    const untouched = simulateGrip(
      make({ approach: { overtravel: 0 }, run: { duration: 0.1 } }),
      'current-clamp',
    ).result
    for (const metric of METRICS) {
      expect(metric.label, metric.id).toMatch(/^[A-Z]/)
      expect(metric.note, metric.id).toMatch(/^[A-Z].{25,}[^.]\.$/)
      for (const each of [result, untouched])
        expect(metric.missing(each, teapot), metric.id).toMatch(/^[A-Z].{15,}[^.]\.$/)
    }
  })
})

describe('plainMetric', () => {
  const metric = (id: string) => METRICS.find((each) => each.id === id)!
  const at = (id: 'peakForce' | 'holdMargin', value: number | null) =>
    plainMetric(metric(id), { ...result, metrics: { ...result.metrics, [id]: value } })

  it('prints three significant digits, and a dash where there is no figure', () => {
    expect([52, 3.3, 0.012345, 12345, 0, null, -0.5].map((value) => at('peakForce', value))).toEqual([
      '52.0',
      '3.30',
      '0.0123',
      '12300',
      '0',
      '—',
      '−0.500',
    ])
  })

  it('prints no digit finer than the grain: tenths of a per cent of a margin', () => {
    expect([0.03244, 0.0995, 1.5678, -0.0000116, 0.0004, 0.0006].map((value) => at('holdMargin', value))).toEqual([
      '3.2',
      '10.0',
      '157',
      '0',
      '0',
      '0.1',
    ])
    expect(worth({ grain: 0.001 }, 0.0004)).toEqual({ value: 0, digits: 0 })
  })
})
