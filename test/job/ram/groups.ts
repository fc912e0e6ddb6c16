/** The group of the file that a ram has. */
import type Type from 'typebox'
import type { Scenario } from '../../../sim/scenario/index.ts'
import { group, quantity } from '../../../sim/scenario/quantity.ts'

const of = (label: string, unit: string, preset: number, range: [number, number]) =>
  quantity({ label, symbol: 'x', unit, default: preset, range, note: `${label} of a ram.` })

export const ramSchema = group('Ram', {
  mass: of('Mass', 'kg', 0.5, [0.01, 10]),
  stroke: of('Stroke', 'm', 0.05, [0.01, 1]),
  gap: of('Way to the spring', 'm', 0.01, [0, 1]),
  stiffness: of('Stiffness', 'N/m', 5e4, [1, 1e9]),
  damping: of('Damping', 'N·s/m', 0, [0, 1e6]),
  least: of('Least force', 'N', 20, [0, 1e6]),
  most: of('Most force', 'N', 200, [0, 1e9]),
})

export const ramIn = (scenario: Scenario) => (scenario as unknown as { ram: Type.Static<typeof ramSchema> }).ram
