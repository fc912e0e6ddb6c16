import { describe, expect, it } from 'vitest'
import { reasonOf, recommend } from '../../../sim/index.ts'
import { judgeGrip } from '../../../sim/run/simulate.ts'
import { inPlainSpaces } from '../../../sim/say/figure.ts'
import { quick } from '../../grip/scenarios.ts'
import { SI } from '../../say/support.ts'

const asking = (requirements: object, edits: Record<string, unknown> = {}) => quick({ ...edits, requirements })
const judged = (requirements: object, edits?: Record<string, unknown>) =>
  judgeGrip(asking(requirements, edits), 'current-clamp').result

describe('requirements', () => {
  const { metrics } = judged({})
  const { peakForce, holdMargin, contactTime } = metrics

  it('are met at the bound itself, and missed beyond it', () => {
    const asked = {
      peakForce: { most: peakForce },
      holdMargin: { least: holdMargin },
      contactTime: { least: 0, most: 1 },
    }
    expect(judged(asked).requirements.map(({ figure, bound, met }) => [figure, bound, met])).toEqual([
      ['contactTime', 'least', true],
      ['contactTime', 'most', true],
      ['peakForce', 'most', true],
      ['holdMargin', 'least', true],
    ])
    const more = { peakForce: { most: peakForce! * 0.999 }, holdMargin: { least: holdMargin! * 1.001 } }
    expect(judged(more).requirements.map(({ met }) => met)).toEqual([false, false])
  })

  it('leave verdict and figures as they are', () => {
    const { requirements, ...rest } = judged({ contactTime: { most: contactTime! / 2 } })
    expect(requirements).toHaveLength(1)
    expect(rest).toEqual({ ...judged({}), requirements: undefined, ...rest })
    expect(rest.verdict).toBe(judged({}).verdict)
    expect(rest.metrics).toEqual(metrics)
  })

  it('count a figure that nothing limits as unlimited, and one that does not exist as missed', () => {
    const free = { 'arm.gravity': 'none', 'arm.moves': [], 'part.markForce': undefined, 'part.yieldForce': undefined }
    const none = { ...free, 'part.crackForce': undefined }
    const [hold, damage] = judged({ holdMargin: { least: 5 }, damageMargin: { least: 5 } }, none).requirements
    expect(hold).toMatchObject({ value: Number.POSITIVE_INFINITY, met: true })
    expect(damage).toMatchObject({ value: Number.POSITIVE_INFINITY, met: true })
    const [move] = judged({ minForceInMove: { least: 0 } }, free).requirements
    expect(move).toMatchObject({ value: null, met: false })
    expect(judged({ lostCycles: { most: 0 } }).requirements[0]).toMatchObject({ value: 0, met: true })
  })

  it('are told beside the verdict, in the reader’s units', () => {
    const scenario = asking({ contactTime: { most: 0.01 }, peakForce: { least: 1 } })
    const { result } = judgeGrip(scenario, 'current-clamp')
    const said = inPlainSpaces(reasonOf(scenario, result, SI))
    expect(said).toMatch(/First touch \d+ ms, at most 10 ms asked\.$/)
    expect(said).not.toContain('Peak force')
  })

  it('keep a strategy from being recommended', () => {
    const ask = (requirements: object) => recommend(asking(requirements), [judged(requirements)])
    expect(ask({}).best?.strategy).toBe('current-clamp')
    expect(ask({ contactTime: { most: 0.01 } }).best).toBeNull()
    expect(ask({ contactTime: { most: 0.01 } }).out[0]).toMatchObject({ result: { verdict: 'held' }, short: true })
  })
})
