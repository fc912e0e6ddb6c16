import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import {
  analyseLoops,
  type DriveScales,
  driveResolutions,
  driveSettings,
  driveSheet,
  editScenario,
  inPlainSpaces,
  judgedSettings,
  judgeGrip,
  PRESETS,
  remarkOn,
  type Scenario,
  scalesFrom,
  settingsCsv,
  settingsMarkdown,
  wordingOf,
} from '../../sim/index.ts'
import { enteredScenario } from '../../sim/loops/drive/entered.ts'
import { scenarioOf } from '../checks/support.ts'
import { make } from '../scenario/make.ts'

const SI = wordingOf('si')

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

const SETTINGS = judgedSettings(SCENARIO, SCALES)
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
    const said = (scales: DriveScales, path: string) =>
      remarkOn(judgedSettings(SCENARIO, scales).find((row) => row.path === path)!, 'grip', SI)
    expect(said(narrow, 'servo.kd')).toMatch(/does not fit/)
    expect(said(SCALES, 'servo.ki')).toMatch(/rounding error/)
    expect(said(SCALES, 'strategies.sensedForce.deadband')).toMatch(/lost/)
    expect(said(SCALES, 'servo.kp')).toBe('')
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
    const rows = settingsCsv(SETTINGS, 'grip').split('\r\n')
    expect(rows.pop()).toBe('')
    expect(rows[0]).toBe('setting,path,value,unit,integer,means,error [%],remark')
    expect(rows).toHaveLength(SETTINGS.length + 1)
    for (const row of Papa.parse<string[]>(settingsCsv(SETTINGS, 'grip').trimEnd()).data) expect(row).toHaveLength(8)
    expect(rows.find((row) => row.includes('servo.kp,'))).toBe(
      '"Position, proportional",servo.kp,8000,A/m,2048,8000,0,',
    )
  })

  it('Markdown says of each grip which ratings it exceeds, or that it exceeds none', () => {
    const heavy = make(SCENARIO, { 'actuator.motor.continuousCurrent': 0.5 })
    const gripOf = (scenario: Scenario) => ({
      label: 'Current clamp',
      scenario,
      result: judgeGrip(scenario, 'current-clamp').result,
    })
    const text = settingsMarkdown(driveSheet(SCENARIO, SCALES), SI, [gripOf(heavy)])
    expect(text).toMatch(/## Ratings\n\n- Current clamp: overloaded\. Settles at \S+ A, .* the 0\.5 A that the motor/)
    const light = settingsMarkdown(driveSheet(SCENARIO, SCALES), SI, [gripOf(SCENARIO)])
    expect(light).toContain('- Current clamp: within the ratings of motor and drive, as simulated.')
    expect(settingsMarkdown(driveSheet(SCENARIO, SCALES), SI, [])).not.toContain('## Ratings')
  })

  it('Markdown holds settings, margins, cautions and commissioning steps, its tables whole', () => {
    const text = settingsMarkdown(driveSheet(SCENARIO, SCALES), SI, [])
    expect(text.startsWith('# Settings sheet: Cup \\| "thin"\n')).toBe(true)
    for (const head of ['## Settings', '## Resolution', '## Margins to expect', '## Cautions', '## Commissioning'])
      expect(text).toContain(head)
    expect(text).toMatch(/pinch/i)
    expect(text).toMatch(/risk assessment/)
    const tables = text.split('\n\n').filter((block) => block.startsWith('|'))
    expect(tables).toHaveLength(4)
    for (const table of tables) {
      const widths = table.split('\n').map((line) => line.replaceAll('\\|', '').split('|').length)
      expect(new Set(widths).size).toBe(1)
    }
  })
})

describe('remedies', () => {
  const scales = fc.record({
    countsPerMetre: fc.double({ min: 1e4, max: 1e8, noNaN: true }),
    amperesPerUnit: fc.double({ min: 1e-5, max: 0.1, noNaN: true }),
    newtonsPerUnit: fc.double({ min: 1e-4, max: 1, noNaN: true }),
    samplePeriod: fc.constantFrom(0.00005, 0.00025, 0.001, 0.004),
    forceSamplePeriod: fc.constantFrom(0.001, 0.004),
    shift: fc.integer({ min: 0, max: 31 }),
    wordBits: fc.constantFrom<16 | 32>(16, 32),
  })

  it('each, carried out, ends the trouble and makes no other', () => {
    let tried = 0
    fc.assert(
      fc.property(scales, fc.constantFrom(...PRESETS), (given, { scenario }) => {
        const before = judgedSettings(scenario, given)
        for (const { path, remedies } of before)
          for (const { scale, value } of remedies) {
            tried++
            const after = driveSettings(scenario, { ...given, [scale]: value })
            for (const [i, row] of after.entries()) {
              const wrong = row.overflow || row.lost
              if (row.path === path) expect(wrong || Math.abs(row.error!) > 0.01, `${path} by ${scale}`).toBe(false)
              else if (wrong) expect(before[i]!.overflow || before[i]!.lost, `${row.path} by ${scale}`).toBe(true)
            }
          }
      }),
      { numRuns: 60 },
    )
    expect(tried).toBeGreaterThan(100)
  })

  it('a value at which a setting comes out whole is found where no bound helps', () => {
    // 0.3 ms are 1.2 samples of 0.25 ms: at 0.3 ms one sample, and no setting is lost that was not.
    const filter = judgedSettings(PRESETS[0]!.scenario, scalesFrom(PRESETS[0]!.scenario)).find(
      ({ path }) => path === 'servo.speedFilter',
    )!
    expect(filter.remedies).toEqual([{ scale: 'samplePeriod', bound: 'alone', value: 0.0003 }])
    expect(inPlainSpaces(remarkOn(filter, 'grip', SI))).toBe('rounding error above 1 %: a sample period of 0.3 ms')
  })

  it('where none is said to help, none does', () => {
    const { scenario } = PRESETS[0]!
    const given = scalesFrom(scenario)
    const before = judgedSettings(scenario, given)
    const hopeless = before.filter(({ trouble, remedies }) => trouble && remedies.length === 0)
    for (const { path } of hopeless)
      for (const scale of ['countsPerMetre', 'amperesPerUnit', 'newtonsPerUnit', 'samplePeriod'] as const)
        for (let n = -400; n <= 400; n++) {
          const after = driveSettings(scenario, { ...given, [scale]: given[scale] * 10 ** (n / 200) })
          const helps = after.every((row, i) =>
            row.path === path
              ? !row.overflow && !row.lost && Math.abs(row.error!) <= 0.01
              : !(row.overflow || row.lost) || before[i]!.overflow || before[i]!.lost,
          )
          expect(helps, `${path}: ${scale} times ${10 ** (n / 200)}`).toBe(false)
        }
  })

  it('never advises a shift where none enters: the dead band is counts a sample', () => {
    const lost = judgedSettings(SCENARIO, SCALES).find(({ path }) => path.endsWith('deadband'))!
    expect(lost.remedies.map(({ scale }) => scale)).not.toContain('shift')
    expect(remarkOn(lost, 'grip', SI)).not.toMatch(/shift/)
  })

  it('a position gain that does not fit asks for more counts, not fewer', () => {
    const narrow = { ...SCALES, shift: 16, wordBits: 16 as const }
    const { remedies } = judgedSettings(SCENARIO, narrow).find(({ path }) => path === 'servo.kp')!
    expect(remedies).toContainEqual({ scale: 'wordBits', bound: 'least', value: 32 })
    for (const { scale, bound } of remedies) if (scale === 'countsPerMetre') expect(bound).toBe('least')
  })
})

describe('the axis as entered', () => {
  const FINE: DriveScales = {
    countsPerMetre: 1e9,
    amperesPerUnit: 1e-6,
    newtonsPerUnit: 1e-6,
    samplePeriod: 0.00025,
    forceSamplePeriod: 0.001,
    shift: 16,
    wordBits: 32,
  }
  const phase = (scenario: typeof SCENARIO) =>
    analyseLoops(scenario, { loops: ['position'], workingPoints: ['free'] }).loops[0]!.margins!.phaseMargin!

  it('is the axis itself where the integers are fine and the periods its own, but for the half sample of the sum', () => {
    // A speed filter of whole samples, as the drive has them.
    const own = { ...SCENARIO, servo: { ...SCENARIO.servo, speedFilter: 0.0005 } }
    const { scenario, unfit } = enteredScenario(own, FINE)
    expect(unfit.map(({ path }) => path)).toEqual([])
    // Σe with the present error in it: k_p and k_i·T, where the trapezoidal rule has k_p and k_i·T/2.
    const { kp, ki } = SCENARIO.servo
    expect(scenario.servo.kp + (scenario.servo.ki * 0.00025) / 2).toBeCloseTo(kp + ki * 0.00025, 1)
    expect(scenario.servo.rate).toBeCloseTo(SCENARIO.servo.rate, 9)
    expect(Math.abs(phase(scenario) - phase(own))).toBeLessThan(0.1)
  })

  it('a longer period costs the phase of its delay: 1 ms instead of 0.25 ms about a third of the margin', () => {
    const slow = enteredScenario(SCENARIO, { ...FINE, samplePeriod: 0.001 }).scenario
    const own = phase(SCENARIO)
    expect(phase(slow)).toBeLessThan(own - 8)
    // The same axis with a servo of that rate and its filter in whole samples, none here; the sum's half sample is worth little.
    const other = { ...SCENARIO, servo: { ...SCENARIO.servo, rate: 1000, speedFilter: 0 } }
    expect(Math.abs(phase(slow) - phase(other))).toBeLessThan(2)
  })

  it('a gain that is lost is 0, one that does not fit counts as wanted and is named', () => {
    const coarse = enteredScenario(SCENARIO, { ...SCALES, shift: 0 })
    expect(coarse.scenario.servo.ki).toBe(0)
    const narrow = enteredScenario(SCENARIO, { ...SCALES, wordBits: 16 })
    expect(narrow.unfit.map(({ path }) => path)).toContain('servo.kd')
    expect(narrow.scenario.servo.kd).toBe(SCENARIO.servo.kd)
  })

  it('takes the next longer whole multiple of a period, and the sheet says so', () => {
    const odd = { ...SCALES, samplePeriod: 0.00033, forceSamplePeriod: 0.001 }
    const { samplePeriod, forceSamplePeriod } = enteredScenario(SCENARIO, odd)
    expect(samplePeriod).toBeCloseTo(0.00035, 12)
    expect(forceSamplePeriod).toBeCloseTo(0.00105, 12)
    expect(settingsMarkdown(driveSheet(SCENARIO, odd), SI, [])).toMatch(/0\.35 ms instead of 0\.33 ms/)
  })

  it('the sheet’s margins follow the period', () => {
    const margins = (scales: DriveScales) =>
      settingsMarkdown(driveSheet(SCENARIO, scales), SI, [])
        .split('\n')
        .find((line) => line.startsWith('| position | Free air'))
    expect(margins(SCALES)).not.toBe(margins({ ...SCALES, samplePeriod: 0.001 }))
  })
})

it('resolutions by hand', () => {
  const at = (id: string) => driveResolutions(SCENARIO, SCALES).find((each) => each.id === id)!
  expect(at('travel')).toMatchObject({ step: 1e-6, force: null })
  // One count in 0.25 ms.
  expect(at('speed').step).toBeCloseTo(0.004, 12)
  expect(at('force').step).toBe(0.01)
  expect(at('current').step).toBe(0.001)
  // The force loop's output: 4 mm/s for 1 ms are 4 µm, on the stiffest part's gauge slope.
  const { force } = at('wanted-speed')
  const stiff = editScenario(SCENARIO, [{ path: 'part.stiffness', value: SCENARIO.part.stiffness * 1.01 }])
  if (!stiff.ok) throw new Error('refused')
  expect(driveResolutions(stiff.scenario, SCALES).at(-1)!.force).toBeGreaterThan(force!)
  expect(driveResolutions(SCENARIO, { ...SCALES, forceSamplePeriod: 0.002 }).at(-1)!.force).toBeCloseTo(2 * force!, 9)
})
