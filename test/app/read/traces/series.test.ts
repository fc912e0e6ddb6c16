import { describe, expect, it } from 'vitest'
import { windowBand } from '../../../../app/read/traces/series.ts'
import { editScenario, PRESETS } from '../../../../sim/index.ts'

const LIMITS = ['part.markForce', 'part.yieldForce', 'part.crackForce']

describe('The force window on the chart', () => {
  it.each([
    ['marks', [20, 30, 40]],
    ['dents', [30, 20, 40]],
    ['breaks', [40, 30, 20]],
    ['breaks', [undefined, undefined, 20]],
  ])('says that the part %s above the lowest of its limits', (word, limits) => {
    const checked = editScenario(
      PRESETS[0]!.scenario,
      limits.map((value, n) => ({ path: LIMITS[n]!, value })),
    )
    if (!checked.ok) throw new Error('the limits were refused')
    const [band] = windowBand(checked.scenario)
    expect(band).toMatchObject({ to: 20, above: `${word} above` })
  })
})
