import { expect, it } from 'vitest'
import { analyseLoops, PRESETS } from '../../sim/index.ts'
import { loopsTable, rowOf } from '../../sim/say/loops-table.ts'
import { SI } from './support.ts'

const RESULT = analyseLoops(PRESETS[0]!.scenario)
const ROWS = RESULT.loops.map((loop) => rowOf(loop, SI))

it('a row has every figure by name, null where there is none', () => {
  const row = rowOf(RESULT.loops.find(({ loop, workingPoint }) => loop === 'force' && workingPoint === 'free')!, SI)
  expect(row).toMatchObject({ crossover: null, phaseMargin: null, bandwidth: null, stable: true })
  expect(row.note).not.toBe('')
  for (const { poles } of ROWS) expect(poles.length).toBeGreaterThan(0)
  expect(JSON.stringify(ROWS)).not.toMatch(/NaN|Infinity/)
})

it('the table has a line for each loop and working point, and what friction does', () => {
  const lines = loopsTable(RESULT, SI).split('\n')
  expect(lines.filter((line) => /^(current|position|velocity|force) {2,}/.test(line))).toHaveLength(16)
  expect(lines.at(-1)).toMatch(/friction/)
})

it('an unstable loop shows no margins', () => {
  const loop = RESULT.loops[0]!
  const row = rowOf({ ...loop, stable: false, margins: null }, SI)
  expect(row).toMatchObject({ phaseMargin: null, gainMargin: null, peakSensitivity: null, bandwidth: null })
})
