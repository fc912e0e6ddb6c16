import { expect, it } from 'vitest'
import { lawText } from '../../../../app/read/spread/lawText.ts'
import { inPlainSpaces, PRESETS, type UnitSystem, type Varied } from '../../../../sim/index.ts'

const { scenario } = PRESETS[0]!
const said = (varied: Varied, units: UnitSystem = 'si') => inPlainSpaces(lawText(scenario, varied, units))

it('writes every law with its sizes, in the unit that is read', () => {
  const mass = { path: 'part.mass', share: false } as const
  expect(said({ ...mass, law: 'normal', sd: 0.03, share: true })).toBe('normal, 3 %')
  expect(said({ ...mass, law: 'normal', sd: 0.02, within: 0.05 })).toBe('normal, 20 g, sorted out beyond ±50 g')
  expect(said({ ...mass, law: 'normal', tolerance: 0.04, cpk: 1.33 })).toBe('normal, ±40 g at a capability of 1.33')
  expect(said({ ...mass, law: 'uniform', half: 0.01 })).toBe('uniform, ±10 g')
  expect(said({ ...mass, law: 'triangular', low: 0.8, mode: 0.9, high: 1 })).toBe('triangular, 800 g to 1000 g')
  expect(said({ ...mass, law: 'lognormal', factor: 1.25 })).toBe('lognormal, factor 1.25')
  expect(said({ ...mass, law: 'measured', values: [0.9, 0.91] })).toBe('measured, 2 values')
  const ambient: Varied = { path: 'actuator.motor.thermal.ambient', law: 'uniform', half: 8, share: false }
  for (const units of ['si', 'us'] as const) expect(said(ambient, units)).toBe('uniform, ±8 K')
  expect(said({ ...mass, law: 'uniform', half: 0.01 }, 'us')).toMatch(/^uniform, ±0\.\d+ (lb|oz)$/)
})
