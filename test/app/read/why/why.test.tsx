import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { WhyChart } from '../../../../app/read/why/WhyChart.tsx'
import type { Why } from '../../../../sim/index.ts'

const why = (forces: number[], changes: Partial<Why> = {}): Why => {
  const force = forces.reduce((sum, each) => sum + each, 0)
  const causes = forces.map((each, n) => ({
    cause: n === 0 ? ('setting' as const) : ('momentum' as const),
    label: `cause ${n}`,
    without: '',
    force: each,
    share: force > 0 ? each / force : null,
    alone: n === 0 ? null : each / 2,
    last: n === 0 ? null : 2 * each,
    error: null,
  }))
  return {
    job: 'grip',
    verdict: 'held',
    figure: 'peak',
    force,
    bound: null,
    causes,
    untold: [],
    orders: { counted: 1, drawn: false },
    run: null,
    ...changes,
  }
}

const draw = (told: Why, units: 'si' | 'us' = 'si') => renderToStaticMarkup(<WhyChart why={told} units={units} />)

const bars = (markup: string) =>
  [...markup.matchAll(/<rect class="(\w+)" x="([-\d.]+)%" y="2" width="([\d.]+)%"/g)].map(([, kind, x, width]) => ({
    kind,
    from: Number(x),
    to: Number(x) + Number(width),
  }))
const texts = (markup: string) => [...markup.matchAll(/<t[dh][^>]*>([^<]*)</g)].map(([, text]) => text)

describe('the chart of causes', () => {
  it('begins each bar where the one before ends, and ends at the figure', () => {
    const [setting, more, less, whole] = bars(draw(why([40, 30, -10])))
    expect(setting).toMatchObject({ kind: 'setting', from: 0 })
    expect(more!.from).toBeCloseTo(setting!.to, 9)
    expect(less).toMatchObject({ kind: 'less' })
    expect(less!.to).toBeCloseTo(more!.to, 9)
    expect(whole).toMatchObject({ kind: 'whole', from: 0 })
    expect(whole!.to).toBeCloseTo(less!.from, 9)
  })

  it('keeps bars below zero in sight: a grip that loses more than the setting means', () => {
    const drawn = bars(draw(why([10, -15, 5], { figure: 'hold' })))
    for (const { from, to } of drawn) {
      expect(from).toBeGreaterThanOrEqual(-1e-9)
      expect(to).toBeLessThanOrEqual(101)
    }
  })

  it('says every number in words and in the units of the page', () => {
    expect(texts(draw(why([40, 30, -10], { bound: 65 })))).toEqual(
      expect.arrayContaining([
        'cause 1',
        '+30.0',
        '50 %',
        '−10.0',
        'Peak force',
        '60.0',
        '100 %',
        'Least damage limit',
        '65.0',
      ]),
    )
    expect(texts(draw(why([4.4482216152605]), 'us'))).toContain('1.00')
  })

  it('draws a bound that is near, tells one that is far, and draws nothing without a force', () => {
    expect(draw(why([40, 20], { bound: 65 }))).toContain('class="bound"')
    const far = draw(why([40, 20], { bound: 420 }))
    expect(far).not.toContain('class="bound"')
    expect(texts(far)).toContain('420')
    expect(draw(why([40], { force: null }))).toBe('')
  })
})
