import { describe, expect, it } from 'vitest'
import { modesOf } from '../../../../app/views/loops/Poles.tsx'
import { remarks, stepUnit } from '../../../../app/views/loops/simulated.ts'
import {
  analyseLoops,
  frictionNote,
  PRESETS,
  type SimulatedStep,
  type SimulatedSteps,
  wordingOf,
} from '../../../../sim/index.ts'

const { scenario } = PRESETS[0]!

describe('remarks on a simulated step', () => {
  const steps = (grain: number): SimulatedSteps => ({ loop: 'position', friction: false, grain, steps: [] })
  const step = (some: Partial<SimulatedStep>): SimulatedStep => ({
    workingPoint: 'free',
    size: 1e-5,
    step: { time: new Float64Array(0), value: new Float64Array(0) },
    deviation: 0,
    bounds: [],
    ...some,
  })

  it('name what it met, and an encoder that is coarse for it', () => {
    expect(remarks(steps(1e-6), step({ bounds: ['voltage'] }), 'grip')).toEqual(['voltage limit', 'encoder step 10 %'])
    expect(remarks(steps(1e-7), step({}), 'grip')).toEqual([])
    expect(remarks({ ...steps(1e-7), friction: true }, step({}), 'grip')).toEqual(['dry friction'])
  })

  it('come with its size in the units of the page', () => {
    expect(stepUnit('position', 'grip', 'si').symbol).toBe('µm')
    expect(stepUnit('velocity', 'grip', 'us').symbol).toBe('in/s')
  })
})

describe('poles as modes', () => {
  it('are ln(z)/T, a pair once, those at z = 0 left out (closed form)', () => {
    const [omega, zeta, period] = [200, 0.3, 1e-3]
    const radius = Math.exp(-zeta * omega * period)
    const angle = omega * Math.sqrt(1 - zeta * zeta) * period
    const pair = [1, -1].map((sign) => ({ re: radius * Math.cos(angle), im: sign * radius * Math.sin(angle) }))
    const modes = modesOf([...pair, { re: 0, im: 0 }, { re: Math.exp(-0.05), im: 0 }], period)
    expect(modes).toHaveLength(2)
    expect(modes[0]!.frequency).toBeCloseTo(50, 6)
    expect(modes[0]!.damping).toBeCloseTo(1, 9)
    expect(modes[1]!.frequency).toBeCloseTo(omega, 6)
    expect(modes[1]!.damping).toBeCloseTo(zeta, 9)
  })
})

describe('the friction note', () => {
  it('says the same in both systems of units: 7.5 N are 1.69 lbf', () => {
    const { friction } = analyseLoops(scenario)
    expect(frictionNote(friction, wordingOf('si'))).toMatch(/friction of up to 7.5\sN/)
    expect(frictionNote(friction, wordingOf('us'))).toMatch(/friction of up to 1.69\slbf/)
  })
})
