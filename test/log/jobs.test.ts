/**
 * Logs of every job: a run by a strategy, seen at even instants with noise of its own on every column, is fitted from a file in which the
 * work is wrong, and what it was run with is found. The run goes by strategy and profile, the fit by the replay of the reference.
 */
import { describe, expect, it } from 'vitest'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { core, run } from '../../sim/cli/core.ts'
import { SAMPLED } from '../../sim/cycle/samples.ts'
import { ALL_PRESETS, editScenario, type Scenario } from '../../sim/index.ts'
import { identify } from '../../sim/log/identify.ts'
import { layOver } from '../../sim/log/lay.ts'
import type { Measured } from '../../sim/log/measured.ts'
import { LogReader } from '../../sim/log/read/reader.ts'
import { understand } from '../../sim/log/read/understand.ts'
import { freeable } from '../../sim/log/stages.ts'
import { modelOf } from '../../sim/model/model.ts'
import { readPath } from '../../sim/scenario/index.ts'
import type { CurrentClamp } from '../../sim/strategy/current-clamp/machine.ts'
import { strategyOf } from '../../sim/strategy/index.ts'
import { normals } from './normals.ts'

const crew = crewHere(run, core)

function edited(id: string, edits: Record<string, unknown>): Scenario {
  const { scenario } = ALL_PRESETS.find((preset) => preset.id === id)!
  const made = editScenario(
    scenario,
    Object.entries({ 'drive.currentNoise': 0, 'run.cycle': null, ...edits }).map(([path, value]) => ({ path, value })),
  )
  if (!made.ok) throw new Error(JSON.stringify(made.faults))
  return made.scenario
}

/** Noise of positions, and of the other columns, as shares of the largest value in each. */
const [FINE, NOISE] = [3e-6, 1e-4]

function logOf(scenario: Scenario, rate: number, seed: number): Measured {
  const model = modelOf(scenario, strategyOf('current-clamp'))
  const count = Math.floor(scenario.run.duration * rate)
  const time = Float64Array.from({ length: count }, (_, k) => k / rate)
  const { bench } = model
  bench.sampling = 1
  bench.samples.period = 1 / scenario.drive.currentRate
  bench.samples.count = count
  bench.samples.instants = time
  bench.samples.columns = new Float64Array(SAMPLED * count)
  const { course } = (bench.drive.strategy as CurrentClamp).follower
  course.setOut(0, 0)
  const target = time.map((t) => {
    course.at(Math.floor(t * scenario.servo.rate + 1e-6) / scenario.servo.rate)
    return course.position()
  })
  const running = core.lay(model)
  running.begin(model.samples)
  running.advance(model.samples)
  const all = running.array('samples', 'columns')
  const random = normals(seed)
  const column = (c: number, noise = NOISE) => {
    const values = all.slice(c * count, (c + 1) * count)
    const size = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
    return values.map((value) => value + noise * size * random())
  }
  return {
    time,
    trace: true,
    channels: {
      target,
      motorTravel: column(0, FINE),
      travel: column(2, FINE),
      speed: column(1),
      current: column(4),
      command: column(6, 0),
      force: column(5),
    },
  }
}

/** What the file has wrong, and how near what is found must come to the truth. */
const CASES: [id: string, wrong: Record<string, number>, within: Record<string, number>][] = [
  [
    'cast-arm',
    { 'ram.gap': 0.0212, 'bushing.interference': 8e-6, 'bore.shoulder.depth': 0.0118 },
    { 'ram.gap': 2e-5, 'bushing.interference': 5e-8, 'bore.shoulder.depth': 2e-5, 'ram.stiffness': 4e6 },
  ],
  [
    'jar-lid',
    { 'chuck.startAngle': 2.8, 'closure.engagement': 6.6, 'closure.runDown': 0.2, 'liner.stiffness': 3e5 },
    { 'chuck.startAngle': 1e-3, 'closure.engagement': 2e-3, 'closure.runDown': 2e-3, 'liner.stiffness': 2e3 },
  ],
  ['tray-film', { 'web.modulus': 3e9, 'web.slack': 0.014 }, { 'web.modulus': 1.5e8, 'web.slack': 1e-4 }],
]

describe.each(CASES)('a log of %s', { timeout: 120_000 }, (id, wrong, within) => {
  const truth = edited(id, {})
  const file = edited(id, wrong)
  const log = logOf(truth, truth.servo.rate, 7)

  it('tells the work that it was recorded on', async () => {
    const { values, settled, scenario } = await identify(file, [log], { free: null }, crew)
    expect(settled).toBe(true)
    for (const [path, error] of Object.entries(within)) {
      const found = values.find((value) => value.path === path)!
      expect(Math.abs(found.value - (readPath(truth, path) as number)), path).toBeLessThan(error)
      expect(found.low!).toBeLessThan(found.value)
      expect(found.high!).toBeGreaterThan(found.value)
      expect(readPath(scenario, path)).toBe(found.value)
    }
  })

  it('is laid over the file as it stands, the work met', async () => {
    const { logs, residuals, alignment } = await layOver(truth, [log], { free: null }, crew)
    expect(logs[0]!.setup.contact).toBe(true)
    expect(alignment[0]!.touch).not.toBeNull()
    for (const { channel, relative } of residuals) expect(relative!, channel).toBeLessThan(0.05)
  })

  it('offers to set free what the format has of its work', () => {
    const free = freeable(truth, true)
    for (const path of Object.keys(within)) expect(free).toContain(path)
    expect(freeable(truth, false).some((path) => path in within)).toBe(false)
  })
})

it('of a spindle that meets nothing tells the axis', { timeout: 60_000 }, async () => {
  // It creeps on before its closure begins, so that two speeds are in the log.
  const free = { 'chuck.startAngle': 40, 'approach.creepFrom': 25 }
  const truth = edited('jar-lid', { ...free, 'actuator.transmission.coulomb': 0.12 })
  const file = edited('jar-lid', { ...free, 'actuator.motor.inertia': 5e-5, 'actuator.transmission.viscous': 0.004 })
  const wish = { free: ['actuator.motor.inertia', 'actuator.transmission.viscous'], part: false }
  const { logs, values } = await identify(file, [logOf(truth, 4000, 3)], wish, crew)
  expect(logs[0]!.setup.contact).toBe(false)
  const found = (path: string) => values.find((value) => value.path === path)!.value
  expect(Math.abs(found('actuator.motor.inertia') / 3e-5 - 1)).toBeLessThan(0.05)
  expect(Math.abs(found('actuator.transmission.viscous') / 0.002 - 1)).toBeLessThan(0.15)
})

it('of an axis that turns has angles and torques, of another one ways and forces', () => {
  const text = (position: string, force: string) =>
    `time [s],position [${position}],current [A],force [${force}]\n${Array.from({ length: 60 }, (_, k) => `${k / 1000},${k / 10},1,${k}`).join('\n')}\n`
  const read = (position: string, force: string, turning: boolean) => {
    const reader = new LogReader({})
    reader.push(new TextEncoder().encode(text(position, force)))
    const { columns } = understand(reader.finish(), { turning })
    return columns.map(({ channel, scale, si }) => [channel, scale, si])
  }
  expect(read('rev', 'N·m', true)).toContainEqual(['travel', 2 * Math.PI, 'rad'])
  expect(read('deg', 'N·m', true)).toContainEqual(['travel', (2 * Math.PI) / 360, 'rad'])
  expect(read('mm', 'N', true)).toContainEqual(['travel', null, ''])
  expect(read('rev', 'N', false)).toContainEqual(['travel', null, ''])
  expect(read('mm', 'N', false)).toContainEqual(['travel', 1e-3, 'm'])
})
