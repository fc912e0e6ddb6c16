import { describe, expect, it } from 'vitest'
import { axisItems, courseItems, workItems } from '../../../../app/views/report/job.ts'
import { allParameters, changesFrom, settingsToEnter } from '../../../../app/views/report/settings.ts'
import { editScenario, PRESETS, readPath, type Scenario, STRATEGIES, type StrategyId } from '../../../../sim/index.ts'
import { leavesOf, quantitiesOf } from '../../../scenario/schema-walk.ts'

const [teapot] = PRESETS.map(({ scenario }) => scenario) as [Scenario]
const all = STRATEGIES.map(({ id }) => id)
const changed = (scenario: Scenario, path: string, value: unknown) => {
  const checked = editScenario(scenario, [{ path, value }])
  if (!checked.ok) throw new Error(checked.faults[0]?.allowed)
  return checked.scenario
}

describe('settings to enter', () => {
  const pathsOf = (shown: StrategyId[]) =>
    settingsToEnter(teapot, teapot, shown, 'si').flatMap(({ settings }) => settings.map(({ path }) => path))

  it('are those of the drive, the approach and the strategies that are shown', () => {
    const paths = pathsOf(all)
    for (const path of [
      'servo.kp',
      'drive.currentBandwidth',
      'approach.creepFrom',
      'strategies.sensedForce.velocity.ki',
    ])
      expect(paths).toContain(path)
    for (const path of ['sensors.encoder.resolution', 'drive.busVoltage', 'sensors.gauge.noise'])
      expect(paths).not.toContain(path)
    expect(pathsOf(['current-clamp']).filter((path) => path.startsWith('strategies'))).toEqual([
      'strategies.currentClamp.limit',
      'strategies.currentClamp.from',
    ])
  })

  it('say what the preset had, and what else was changed', () => {
    const faster = changed(changed(teapot, 'approach.speed', 0.08), 'part.mass', 1.1)
    const scenario = changed(faster, 'arm.moves[0].acceleration', 7)
    const groups = settingsToEnter(scenario, teapot, all, 'si')
    const told = groups.flatMap(({ settings }) => settings.filter(({ before }) => before !== ''))
    expect(told.map(({ path, value, before }) => [path, plain(value), plain(before)])).toEqual([
      ['approach.speed', '80 mm/s', '50 mm/s'],
    ])
    const { from, others } = changesFrom(teapot, scenario, groups, 'si')
    expect(from).toContain(teapot.name)
    expect(others.map(({ path }) => path)).toEqual(['part.mass', 'arm.moves'])
    expect(plain(others[1]!.value)).toContain('up, 7 m/s² from 0.7 s')
    expect(plain(others[1]!.before)).toContain('up, 6 m/s² from 0.7 s')
  })
})

describe('every parameter', () => {
  it.each(PRESETS)('of $id is printed, with its unit', ({ scenario }) => {
    const { kind } = scenario.actuator
    const printed = allParameters(scenario, scenario, 'si').flatMap(({ settings }) => settings)
    const paths = new Set(printed.map(({ path }) => path.replace(/\[\d+\]/, '[0]')))
    const unset = (path: string) => readPath(scenario, path) === null || readPath(scenario, path) === undefined
    const head = ['format', 'version', 'job', 'name', 'notes', 'actuator.kind', 'actuator.family']
    const missing = leavesOf(kind).filter(({ path }) => !head.includes(path) && !unset(path) && !paths.has(path))
    expect(missing.map(({ path }) => path)).toEqual([])
    for (const { path, schema } of quantitiesOf(kind)) {
      const one = printed.find((each) => each.path === path)
      if (one && schema.unit !== '') expect(one.value, path).toMatch(/[^\d.\s\u2212\u202f]/)
    }
  })
})

describe('job', () => {
  it('names what decides the grip, and only what there is', () => {
    const words = (items: { label: string; value: string }[]) =>
      items.map(({ label, value }) => plain(`${label} ${value}`))
    expect(words(workItems(teapot, 'si'))).toContain('Crack force 65 N')
    expect(words(workItems(teapot, 'si')).some((text) => text.startsWith('Relax'))).toBe(false)
    expect(words(workItems(PRESETS[2]!.scenario, 'si'))).toContain('Stiffness 3.79473 N/mm¹·⁵')
    expect(words(axisItems(teapot, 'us')).join()).toContain('Lead 0.19685 in')
    expect(words(courseItems(teapot, 'si'))).toContain('Move 1 up, 6 m/s² from 0.7 s for 0.36 s, jerk 300 m/s³')
    const still = changed(teapot, 'arm.moves', [])
    expect(words(courseItems(still, 'si'))).toContain(' No arm move')
    expect(words(courseItems(changed(still, 'events.powerLoss', { time: 0.9 }), 'si'))).toContain(
      'Power loss at 0.9 s, windings open',
    )
  })
})

function plain(text: string) {
  return text.replaceAll('\u00a0', ' ').replaceAll('\u202f', '')
}
