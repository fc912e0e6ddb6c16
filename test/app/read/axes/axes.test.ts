/** Two axes under one part: the figures are those of the comparison of all axes, and the words say what was fitted. */
import { describe, expect, it } from 'vitest'
import { comparedAxes } from '../../../../app/read/axes/compare.ts'
import { fittedSentences, fittedSettings } from '../../../../app/read/axes/fitted.ts'
import { axisTitle } from '../../../../app/read/axes/names.ts'
import { tellingOf } from '../../../../app/views/present/standing.ts'
import { run } from '../../../../sim/cli/core.ts'
import {
  AXIS_PRESETS,
  editScenario,
  fitAxis,
  PRESETS,
  readPath,
  reportAxis,
  type Scenario,
  STRATEGIES,
  wantedEffort,
} from '../../../../sim/index.ts'

const teapot = PRESETS[0]!.scenario
const axis = AXIS_PRESETS.find(({ id }) => id === 'flat-coils-iron')!

function fittedTo(scenario: Scenario): Scenario {
  const fitted = fitAxis(scenario, axis.actuator)
  if (!fitted.ok) throw new Error(JSON.stringify(fitted.faults))
  return fitted.scenario
}

describe('two axes', () => {
  const fitted = fittedTo(teapot)
  const runs = (of: Scenario) => STRATEGIES.map(({ id }) => run(of, id).result)
  const [own, beside] = [runs(teapot), runs(fitted)]

  it('are compared by the figures that the comparison of all axes has', () => {
    const rows = comparedAxes({ scenario: teapot, results: own }, { scenario: fitted, results: beside }, 'si')
    const cells = (id: string) => rows.find((row) => row.id === id)!.cells
    const report = reportAxis(teapot, axis.actuator, run)
    const digits = (text: string) => Number(text.replaceAll('\u202f', ''))
    expect(digits(cells('mass')[1])).toBeCloseTo(report.movingMass, 2)
    expect(digits(cells('impact')[1])).toBeCloseTo(report.impact!, 0)
    expect(digits(cells('winding')[1])).toBeCloseTo(report.windingTemperature!, 0)
    expect(cells('loss')[1]).toBe(report.powerLoss)
    const held = report.strategies.filter(({ result }) => result!.verdict === 'held').length
    expect(cells('held')[1]).toBe(`${held} of ${STRATEGIES.length}`)
    expect(cells('mass')[0]).not.toBe(cells('mass')[1])
  })

  it('have what was fitted said, key by key', () => {
    const settings = fittedSettings(teapot, fitted, 'si')
    for (const key of ['servo.kp', 'servo.kd', 'servo.currentLimit', 'strategies.currentClamp.limit'])
      if (readPath(teapot, key) !== readPath(fitted, key)) expect(settings.map(({ path }) => path)).toContain(key)
    expect(settings.length).toBeGreaterThan(4)
    for (const { path } of settings) expect(readPath(teapot, path)).not.toEqual(readPath(fitted, path))
  })

  it('say where a strategy of the bench asks for another force than they are compared at', () => {
    const said = (scenario: Scenario) => fittedSentences(scenario, fittedTo(scenario), 'si').join(' ')
    const wanted = wantedEffort(teapot)
    const alike = editScenario(
      teapot,
      STRATEGIES.map((each) => ({ path: each.setting.path, value: each.settingFor(teapot, wanted) })),
    )
    if (!alike.ok) throw new Error(JSON.stringify(alike.faults))
    expect(said(alike.scenario)).not.toMatch(/is set to ask/)
    const other = editScenario(alike.scenario, [{ path: 'strategies.sensedForce.target', value: 0.5 * wanted }])
    if (!other.ok) throw new Error(JSON.stringify(other.faults))
    expect(said(other.scenario)).toMatch(/On the bench Sensed force is set to ask for 19\.\d\sN/)
  })

  it('are named: a generic axis by its title whatever the air, any other by its family', () => {
    expect(axisTitle(fitted)).toBe(axis.title)
    const warm = editScenario(fitted, [{ path: 'actuator.motor.thermal.ambient', value: 41 }])
    expect(warm.ok && axisTitle(warm.scenario)).toBe(axis.title)
    const stiff = editScenario(fitted, [{ path: 'actuator.motor.resistance', value: 3.3 }])
    expect(stiff.ok && axisTitle(stiff.scenario)).not.toBe(axis.title)
  })
})

describe('the strategy that is told first', () => {
  const view = (strategy: string, verdict: string, spare: number) =>
    ({ strategy, scenario: teapot, result: { verdict, metrics: { holdMargin: 2, damageMargin: spare } } }) as never

  it('is one that holds on one axis alone, else the one whose room to spare differs most', () => {
    const own = [
      view('threshold-stop', 'crushed', 0),
      view('current-clamp', 'held', 0.1),
      view('sensed-force', 'held', 0.6),
    ]
    const alike = [
      view('threshold-stop', 'crushed', 0),
      view('current-clamp', 'held', 0.5),
      view('sensed-force', 'held', 0.7),
    ]
    expect(tellingOf(own, alike)).toBe('current-clamp')
    const saved = [view('threshold-stop', 'held', 0.05), ...alike.slice(1)]
    expect(tellingOf(own, saved)).toBe('threshold-stop')
    expect(tellingOf(own, [])).toBe('threshold-stop')
    expect(tellingOf([], [])).toBeNull()
  })
})
