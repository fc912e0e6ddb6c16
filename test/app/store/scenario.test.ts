import { beforeEach, describe, expect, it } from 'vitest'
import { besideOf } from '../../../app/store/beside.ts'
import { useScenario } from '../../../app/store/scenario.ts'
import { ALL_PRESETS, AXIS_PRESETS, axesFor, fitAxis, kindsTaken, PRESETS } from '../../../sim/index.ts'

const bench = () => useScenario.getState()
const speed = () => bench().scenario.approach.speed

beforeEach(() => useScenario.setState(useScenario.getInitialState(), true))

describe('the scenario on the bench', () => {
  it('opens with the first preset and nothing to undo', () => {
    expect(bench().scenario).toEqual(PRESETS[0]?.scenario)
    expect(bench().canUndo).toBe(false)
  })

  it('takes a drag as one undo step, and two drags as two', () => {
    const before = speed()
    for (const value of [0.011, 0.012, 0.013]) bench().edit('approach.speed', value, 'drag 1')
    bench().endGesture()
    for (const value of [0.014, 0.015]) bench().edit('approach.speed', value, 'drag 2')
    bench().undo()
    expect(speed()).toBe(0.013)
    bench().undo()
    expect(speed()).toBe(before)
    expect(bench().canUndo).toBe(false)
    bench().redo()
    bench().redo()
    expect(speed()).toBe(0.015)
    expect(bench().canRedo).toBe(false)
  })

  it('keeps what was there when an edit is refused, and says why', () => {
    const before = bench().scenario
    expect(bench().edit('part.mass', -1)).toBe(false)
    expect(bench().edit('part.mass', Number.NaN)).toBe(false)
    expect(bench().edit('part.mass', 1e308)).toBe(false)
    expect(bench().scenario).toBe(before)
    expect(bench().faults[0]).toMatchObject({ path: 'part.mass', given: '1e+308' })
    expect(bench().canUndo).toBe(false)
    expect(bench().edit('part.mass', before.part.mass * 1.1)).toBe(true)
    expect(bench().faults).toEqual([])
  })

  it('makes no undo step of an edit that changes nothing', () => {
    expect(bench().edit('approach.speed', speed())).toBe(true)
    expect(bench().canUndo).toBe(false)
  })

  it('forgets what was undone once something else is edited', () => {
    bench().edit('approach.speed', 0.011)
    bench().undo()
    bench().edit('approach.speed', 0.012)
    expect(bench().canRedo).toBe(false)
  })

  it('brings the scenario before a loaded one back, together with what "reset" goes to', () => {
    const first = bench().scenario
    const other = PRESETS[1]!.scenario
    bench().load(other)
    expect(bench().base).toBe(other)
    bench().undo()
    expect(bench().scenario).toBe(first)
    expect(bench().base).toBe(first)
  })

  it('takes a second axis as one step of its own, keeps it under every edit, and lets it go with another job', () => {
    const axis = AXIS_PRESETS[3]!
    bench().setBeside(axis)
    bench().edit('approach.speed', 0.011)
    expect(bench().beside).toBe(axis)
    bench().undo()
    expect(bench().beside).toBe(axis)
    bench().undo()
    expect(bench().beside).toBeNull()
    bench().redo()
    expect(bench().beside).toBe(axis)
    bench().load(PRESETS[1]!.scenario)
    expect(bench().beside).toBeNull()
    bench().undo()
    expect(bench().beside).toBe(axis)
  })

  it('fits the second axis to whatever is on the bench, the same object until one of them changes', () => {
    expect(besideOf(bench())).toBeNull()
    bench().setBeside(AXIS_PRESETS[3]!)
    const before = besideOf(bench())!
    expect(before.fitted).toEqual(fitAxis(bench().scenario, AXIS_PRESETS[3]!.actuator))
    expect(besideOf(bench())).toBe(before)
    bench().edit('part.mass', 0.2)
    const after = besideOf(bench())!
    expect(after.fitted.ok && after.fitted.scenario.part.mass).toBe(0.2)
  })

  it('does so for every job, and says which axis does not go with one', () => {
    for (const { scenario } of ALL_PRESETS) {
      const [axis] = axesFor(scenario.job)
      bench().load(scenario, scenario, axis!)
      expect(besideOf(bench())!.fitted, scenario.name).toEqual(fitAxis(scenario, axis!.actuator))
      expect(besideOf(bench())!.fitted.ok).toBe(true)
      const other = axesFor(scenario.job === 'cap' ? 'grip' : 'cap')[0]!
      if (kindsTaken(scenario.job).includes(other.actuator.kind)) continue
      bench().setBeside(other)
      expect(besideOf(bench())!.fitted).toMatchObject({ ok: false, faults: [{ path: 'actuator.kind' }] })
    }
  })
})
