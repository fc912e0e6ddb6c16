import { describe, expect, it } from 'vitest'
import { axisItems, courseItems, workItems } from '../../../../app/views/report/job.ts'
import { allParameters, changesFrom, settingsToEnter } from '../../../../app/views/report/settings.ts'
import {
  ALL_PRESETS,
  editScenario,
  JOB_SCHEMAS,
  PRESETS,
  readPath,
  type Scenario,
  STRATEGIES,
  type StrategyId,
} from '../../../../sim/index.ts'
import { isQuantity, leavesIn } from '../../../scenario/schema-walk.ts'

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
  it.each([...ALL_PRESETS])('of $id is printed, with its unit', ({ scenario }) => {
    const { kind } = scenario.actuator
    const schema = JOB_SCHEMAS[scenario.job][kind] as unknown as Parameters<typeof leavesIn>[0]
    const leaves = leavesIn(schema).filter(
      ({ path, schema }) => schema.const === undefined && !/^(requirements|spread)\b/.test(path),
    )
    const printed = allParameters(scenario, scenario, 'si').flatMap(({ settings }) => settings)
    const paths = new Set(printed.map(({ path }) => path.replace(/\[\d+\]/, '[0]')))
    const unset = (path: string) => readPath(scenario, path) === null || readPath(scenario, path) === undefined
    const head = ['format', 'version', 'job', 'name', 'notes', 'actuator.kind', 'actuator.family']
    const missing = leaves.filter(({ path }) => !head.includes(path) && !unset(path) && !paths.has(path))
    expect(missing.map(({ path }) => path)).toEqual([])
    for (const { path, schema } of leaves.filter((leaf) => isQuantity(leaf.schema))) {
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

/** Of each job: what its sheet must not leave out. */
const TOLD: Record<string, { work: string; axis: string; course: string }> = {
  'cast-arm': { work: 'Interference 10 µm', axis: 'Frame and ram 30 N/µm', course: 'Approach speed 30 mm/s' },
  'lid-hinge': { work: 'Friction, pressing', axis: 'Brush motor, screw', course: 'Way into the bore' },
  'jar-lid': { work: 'Stripping torque 6.5 N·m', axis: 'Gear ratio 5', course: 'Angle beyond the liner 144°' },
  'small-lid': { work: 'Lead', axis: 'Peak current', course: 'Creep before the seat' },
  'paper-roll': {
    work: 'Roll winds the web up',
    axis: 'Gear ratio 5',
    course: 'Ramp 1 to 2 m/s from 2.4 s with 1 m/s², jerk 5 m/s³',
  },
  'tray-film': { work: 'Span 1 m', axis: 'Bus voltage 48 V', course: 'Ramp 4 to 0 m/s from 4.7 s' },
}

describe('the sheet of another job', () => {
  const others = ALL_PRESETS.filter(({ scenario }) => scenario.job !== 'grip')
  const said = (items: { label: string; value: string }[]) =>
    items.map(({ label, value }) => plain(`${label} ${value}`.trim())).join('; ')

  it.each(others)('of $id says what decides it', ({ id, scenario }) => {
    const { work, axis, course } = TOLD[id]!
    expect(said(workItems(scenario, 'si'))).toContain(work)
    expect(said(axisItems(scenario, 'si'))).toContain(axis)
    expect(said(courseItems(scenario, 'si'))).toContain(course)
    expect(said([...workItems(scenario, 'us'), ...courseItems(scenario, 'us')])).not.toMatch(/ (mm|N|N·m|m\/s)\b/)
  })

  it('has a title of its own for every key that is named in it', () => {
    for (const { id, scenario } of others) {
      const labels = [...workItems(scenario, 'si'), ...axisItems(scenario, 'si')].map(({ label }) => label)
      const named = labels.filter((label) => label !== '')
      expect(new Set(named).size, id).toBe(named.length)
    }
  })

  it('of a web has what its drive makes of the line among what is entered', () => {
    const web = others.find(({ id }) => id === 'tray-film')!.scenario
    const groups = settingsToEnter(web, web, ['current-clamp'], 'si')
    expect(groups.map(({ title }) => title)).toEqual([
      'Drawing taut',
      'Following the line',
      'Servo',
      'Drive',
      'Current clamp',
    ])
    for (const { settings } of groups) expect(settings.length).toBeGreaterThan(0)
  })
})

function plain(text: string) {
  return text.replaceAll('\u00a0', ' ').replaceAll('\u202f', '')
}
