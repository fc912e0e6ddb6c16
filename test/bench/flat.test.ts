import { describe, expect, it } from 'vitest'
import { CHANNELS, type Edit, editScenario, PRESETS, type Scenario, simulateGrip, strategyOf } from '../../sim/index.ts'
import { substepsOf } from '../../sim/model/step.ts'
import { runGrip } from '../../sim/run/run.ts'
import { flatGrip } from './flat-axis.ts'

const teapot = PRESETS.find(({ id }) => id === 'teapot')!.scenario
const clamp = strategyOf('current-clamp')

function edited(...edits: Edit[]): Scenario {
  const checked = editScenario(teapot, edits)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

const CASES: [string, Scenario][] = [
  ['the preset', teapot],
  ['a crack and a drop', edited({ path: 'approach.speed', value: 0.25 })],
  ['a part that slides', edited({ path: 'strategies.currentClamp.limit', value: 0.4 })],
  ['an end stop', edited({ path: 'jaws.stroke', value: 0.005 })],
  [
    'an arm that moves every way',
    edited({ path: 'arm.moves[0].axis', value: 'along' }, { path: 'arm.gravity', value: 'along' }),
  ],
  ['a clamp that limits from an opening on', edited({ path: 'strategies.currentClamp.from', value: 0.121 })],
  ['ideal measuring', edited({ path: 'drive.currentNoise', value: 0 }, { path: 'drive.currentResolution', value: 0 })],
  ['a position loop that bangs', edited({ path: 'servo.kd', value: 6000 })],
]

describe('the flattened axis', () => {
  it.each(CASES)('agrees with the real loop to the last bit: %s', (_name, scenario) => {
    const substeps = substepsOf(scenario)
    const flat = flatGrip(scenario, substeps)
    const real = runGrip(scenario, clamp, substeps)
    for (const { id } of CHANNELS) expect([id, flat.traces[id]]).toStrictEqual([id, real.traces[id]])
    expect(flat).toStrictEqual(real)
  })

  it('goes through what the cases promise', () => {
    const happened = CASES.map(([, scenario]) => flatGrip(scenario, substepsOf(scenario)).events)
    expect(happened[0]).toMatchObject({ crack: null, drop: null, unstable: null })
    expect(happened[1]?.crack).not.toBeNull()
    expect(happened[2]?.slip).not.toBeNull()
    expect(happened[7]?.unstable).not.toBeNull()
  })

  it('agrees with what the page shows', () => {
    const { result, traces } = simulateGrip(teapot, 'current-clamp')
    const flat = flatGrip(teapot, substepsOf(teapot))
    expect(flat.metrics).toStrictEqual(result.metrics)
    expect(flat.traces).toStrictEqual(traces)
  })

  it('refuses what it does not have', () => {
    const scenario = edited({ path: 'actuator.transmission.backlash', value: 1e-5 })
    expect(() => flatGrip(scenario, 1)).toThrow(RangeError)
  })
})
