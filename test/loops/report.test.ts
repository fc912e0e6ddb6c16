import { expect, it } from 'vitest'
import { analyseLoops, PRESETS } from '../../sim/index.ts'
import { loopsTable, rowOf } from '../../sim/loops/report.ts'

const RESULT = analyseLoops(PRESETS[0]!.scenario)

it('a row has every figure by name, null where there is none', () => {
  const row = rowOf(RESULT.loops.find(({ loop, workingPoint }) => loop === 'force' && workingPoint === 'free')!)
  expect(row).toMatchObject({ crossover: null, phaseMargin: null, bandwidth: null, stable: true })
  expect(row.note).not.toBe('')
  for (const { poles } of RESULT.loops.map(rowOf)) expect(poles.length).toBeGreaterThan(0)
  expect(JSON.stringify(RESULT.loops.map(rowOf))).not.toMatch(/NaN|Infinity/)
})

it('the table has a line for each loop and working point, and what friction does', () => {
  const lines = loopsTable(RESULT).split('\n')
  expect(lines.filter((line) => /^(current|position|velocity|force) {2,}/.test(line))).toHaveLength(16)
  expect(lines.at(-1)).toMatch(/friction/)
})

it('an unstable loop shows no margins', () => {
  const loop = RESULT.loops[0]!
  const row = rowOf({ ...loop, stable: false, margins: null })
  expect(row).toMatchObject({ phaseMargin: null, gainMargin: null, peakSensitivity: null, bandwidth: null })
})
