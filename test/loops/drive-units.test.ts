import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import {
  analyseLoops,
  type DriveScales,
  driveSettings,
  PRESETS,
  remarkOn,
  scalesFrom,
  settingsCsv,
  settingsMarkdown,
  wordingOf,
} from '../../sim/index.ts'
import { scenarioOf } from '../checks/support.ts'

const SCALES: DriveScales = {
  countsPerMetre: 1e6,
  amperesPerUnit: 0.001,
  newtonsPerUnit: 0.01,
  samplePeriod: 0.00025,
  forceSamplePeriod: 0.001,
  shift: 8,
  wordBits: 32,
}
const SCENARIO = scenarioOf({
  name: 'Cup | "thin"',
  servo: { kp: 8000, ki: 100000, kd: 60, currentLimit: 6 },
  approach: { speed: 0.05 },
  strategies: { sensedForce: { kp: 0.0004, target: 25, deadband: 0.0002 } },
})

const SETTINGS = driveSettings(SCENARIO, SCALES)
const find = (scales: DriveScales, path: string) => driveSettings(SCENARIO, scales).find((row) => row.path === path)!

describe('driveSettings', () => {
  it('converts by hand-computed factors', () => {
    // 8000 A/m = 8 units/count·…: 8000/(0.001·1e6) = 8 units a count, shifted by 8 bits = 2048.
    expect(find(SCALES, 'servo.kp').integer).toBe(2048)
    // 1e5 A/(m·s)/1000·0.25 ms = 0.025 units a count and sample, shifted = 6.4 → 6.
    expect(find(SCALES, 'servo.ki')).toMatchObject({ integer: 6, overflow: false })
    expect(find(SCALES, 'servo.ki').error).toBeCloseTo(6 / 6.4 - 1, 12)
    // 60 A·s/m: one count a sample is 4 mm/s, 0.24 A = 240 units, shifted = 61440.
    expect(find(SCALES, 'servo.kd').integer).toBe(61440)
    expect(find(SCALES, 'servo.currentLimit').integer).toBe(6000)
    // 50 mm/s at 1 µm and 0.25 ms: 12.5 counts a sample → 13 (away from zero).
    expect(find(SCALES, 'approach.speed').integer).toBe(13)
    expect(find(SCALES, 'strategies.sensedForce.target').integer).toBe(2500)
    // 0.2 mm/s: 0.05 counts a sample → 0, lost.
    expect(find(SCALES, 'strategies.sensedForce.deadband')).toMatchObject({ integer: 0, lost: true, error: -1 })
  })

  it('an integer computes the same command as the gain it stands for', () => {
    const { integer } = find(SCALES, 'servo.kp')
    const error = 37e-6
    const units = Math.floor((integer * Math.round(error * SCALES.countsPerMetre)) / 2 ** SCALES.shift)
    expect(Math.abs(units * SCALES.amperesPerUnit - 8000 * error)).toBeLessThan(SCALES.amperesPerUnit)
  })

  it('shows overflow and the largest error that a product bears', () => {
    const narrow = { ...SCALES, wordBits: 16 as const }
    expect(find(narrow, 'servo.kd').overflow).toBe(true)
    expect(find(narrow, 'servo.kp').overflow).toBe(false)
    // 2^31/2048 counts = 1048576 counts = 1.048576 m.
    expect(find(narrow, 'servo.kp').largestError).toBeCloseTo(1.048576, 9)
    expect(remarkOn(find(narrow, 'servo.kd'))).toMatch(/does not fit/)
    expect(remarkOn(find(SCALES, 'servo.ki'))).toMatch(/rounding error/)
    expect(remarkOn(find(SCALES, 'strategies.sensedForce.deadband'))).toMatch(/lost/)
    expect(remarkOn(find(SCALES, 'servo.kp'))).toBe('')
  })

  it('rounds by at most half a unit, for every setting of every preset', () => {
    for (const { scenario } of PRESETS) {
      for (const row of driveSettings(scenario, scalesFrom(scenario))) {
        expect(Number.isSafeInteger(row.integer)).toBe(true)
        const unit = row.integer === 0 ? Number.POSITIVE_INFINITY : Math.abs(row.means / row.integer)
        expect(Math.abs(row.means - row.value)).toBeLessThanOrEqual(0.500001 * unit)
      }
    }
  })

  it.each([
    [{ countsPerMetre: 0 }, /countsPerMetre: given 0, allowed above 0/],
    [{ samplePeriod: Number.NaN }, /samplePeriod: given NaN/],
    [{ shift: 1.5 }, /shift: given 1.5, allowed a whole number from 0 to 31/],
    [{ shift: 32 }, /shift: given 32/],
  ])('refuses %o', (change, message) => {
    expect(() => driveSettings(SCENARIO, { ...SCALES, ...change })).toThrow(message)
  })
})

describe('settings sheet', () => {
  it('CSV has one row a setting and the header, all of eight fields', () => {
    const rows = settingsCsv(SETTINGS).split('\r\n')
    expect(rows.pop()).toBe('')
    expect(rows[0]).toBe('setting,path,value,unit,integer,means,error [%],remark')
    expect(rows).toHaveLength(SETTINGS.length + 1)
    for (const row of Papa.parse<string[]>(settingsCsv(SETTINGS).trimEnd()).data) expect(row).toHaveLength(8)
    expect(rows.find((row) => row.includes('servo.kp,'))).toBe(
      '"Position, proportional",servo.kp,8000,A/m,2048,8000,0,',
    )
  })

  it('Markdown holds settings, margins, cautions and commissioning steps, its tables whole', () => {
    const text = settingsMarkdown(
      { name: SCENARIO.name, scales: SCALES, settings: SETTINGS, loops: analyseLoops(SCENARIO) },
      wordingOf('si'),
    )
    expect(text.startsWith('# Settings sheet: Cup \\| "thin"\n')).toBe(true)
    for (const head of ['## Settings', '## Margins to expect', '## Cautions', '## Commissioning'])
      expect(text).toContain(head)
    expect(text).toMatch(/pinch/i)
    expect(text).toMatch(/risk assessment/)
    const tables = text.split('\n\n').filter((block) => block.startsWith('|'))
    expect(tables).toHaveLength(3)
    for (const table of tables) {
      const widths = table.split('\n').map((line) => line.replaceAll('\\|', '').split('|').length)
      expect(new Set(widths).size).toBe(1)
    }
  })
})
