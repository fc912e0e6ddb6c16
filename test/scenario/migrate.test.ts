/**
 * Files, links and edits of version 1, read by version 2. The fixture was written by the bench as it was before version 2: its
 * scenarios are whole files of version 1, among them one in which every key that moved has a value of its own.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkScenario, editScenario, pathNow, readPath, type Scenario } from '../../sim/index.ts'
import { JOBS } from '../../sim/scenario/schema/index.ts'
import { make } from './make.ts'

interface First {
  version: 1
  servo: { encoderResolution: number }
  strategies: { sensedForce: { sensor: Record<string, number> } }
}

const FIRST: { id: string; scenario: First }[] = JSON.parse(
  readFileSync(new URL('./fixtures/version-1.json', import.meta.url), 'utf8'),
)
const busy = FIRST.find(({ id }) => id === 'busy')!.scenario

const faultsOf = (input: unknown) => {
  const checked = checkScenario(input)
  return checked.ok ? [] : checked.faults
}
const editFaults = (...edits: [path: string, value: unknown][]) => {
  const checked = editScenario(
    make(),
    edits.map(([path, value]) => ({ path, value })),
  )
  return checked.ok ? [] : checked.faults
}

describe('a file of version 1', () => {
  it.each(FIRST)('$id keeps every value, those of encoder and gauge in their new place', ({ scenario }) => {
    const { servo, strategies, version, ...same } = structuredClone(scenario)
    const { encoderResolution, ...servoNow } = servo
    const { sensor, ...sensedForce } = strategies.sensedForce
    expect(version).toBe(1)
    const lifted = make(scenario)
    expect(lifted).toMatchObject({
      ...same,
      servo: servoNow,
      strategies: { ...strategies, sensedForce },
      version: 2,
      job: 'grip',
      sensors: { encoder: { resolution: encoderResolution }, gauge: sensor },
    })
    expect(lifted.servo).not.toHaveProperty('encoderResolution')
    expect(lifted.strategies.sensedForce).not.toHaveProperty('sensor')
    expect(make(lifted)).toEqual(lifted)
  })

  it('is left untouched, and its keys stand in the order of version 2', () => {
    const before = structuredClone(busy)
    expect(Object.keys(make(busy).strategies.sensedForce)).toEqual(Object.keys(make().strategies.sensedForce))
    expect(Object.keys(make(busy))).toEqual(Object.keys(make()))
    expect(busy).toEqual(before)
  })

  it('takes the defaults of what it leaves out', () => {
    expect(make({ version: 1 })).toEqual(make())
    expect(make({ version: 1, strategies: { sensedForce: { sensor: { noise: 0.2 } } } })).toEqual(
      make({ sensors: { gauge: { noise: 0.2 } } }),
    )
  })

  it('is told by a key that only version 1 had, where it names no version', () => {
    expect(make({ servo: { kp: 7, encoderResolution: 2e-6 } })).toEqual(
      make({ servo: { kp: 7 }, sensors: { encoder: { resolution: 2e-6 } } }),
    )
    expect(make({ strategies: { sensedForce: { sensor: {} } } })).toEqual(make())
  })

  it('is so told, too, where it has every such key, and is none where it has no such key', () => {
    const both = {
      servo: { encoderResolution: 1e-5 },
      strategies: { sensedForce: { sensor: { noise: 0.2 } } },
    }
    expect(checkScenario(both)).toMatchObject({ ok: true, scenario: { sensors: { gauge: { noise: 0.2 } } } })
    const none = { strategies: { sensedForce: { derivativeFilter: 0.001 } } } // which version 1 did not have
    expect(checkScenario(none)).toMatchObject({ ok: true, scenario: { strategies: none.strategies } })
  })

  it('is refused by its paths as written', () => {
    expect(
      faultsOf({
        version: 1,
        servo: { encoderResolution: -1, encoderSteps: 3 },
        strategies: { sensedForce: { sensor: { noise: 'some', colour: 1 } } },
        run: { duration: 0 },
      })
        .map(({ path }) => path)
        .sort(),
    ).toEqual([
      'run.duration',
      'servo.encoderResolution',
      'servo.encoderSteps',
      'strategies.sensedForce.sensor.colour',
      'strategies.sensedForce.sensor.noise',
    ])
    for (const key of ['job', 'sensors'])
      expect(faultsOf({ version: 1, [key]: {} })).toEqual([
        expect.objectContaining({ path: key, given: 'an unknown key', allowed: expect.not.stringContaining(key) }),
      ])
    expect(faultsOf({ version: 1, servo: 3, strategies: { sensedForce: [] } }).map(({ path }) => path)).toEqual([
      'servo',
      'strategies.sensedForce',
    ])
  })

  it('answers to the rules between keys as any other', () => {
    const sensor = { noise: -1 }
    expect(
      faultsOf({ version: 1, servo: { rate: 3500 }, strategies: { sensedForce: { rate: 500, sensor } } })
        .map(({ path }) => path)
        .sort(),
    ).toEqual(['servo.rate', 'strategies.sensedForce.sensor.noise'])
  })
})

describe('a file of version 2', () => {
  it('is told where a key went that only version 1 had', () => {
    expect(faultsOf({ version: 2, servo: { encoderResolution: 0 } })).toEqual([
      {
        path: 'servo.encoderResolution',
        given: 'an unknown key',
        allowed: 'sensors.encoder.resolution, where version 2 has it',
      },
    ])
    expect(faultsOf({ job: 'grip', strategies: { sensedForce: { sensor: {} } } })[0]).toMatchObject({
      path: 'strategies.sensedForce.sensor',
      allowed: 'sensors.gauge, where version 2 has it',
    })
  })

  it('grips where it names no job; another job than the known ones is refused by its path', () => {
    expect(make().job).toBe('grip')
    for (const job of ['weld', '', '__proto__', 'toString', null, 3, ['grip']])
      expect(faultsOf({ job })).toEqual([
        {
          path: 'job',
          given: JSON.stringify(job).replace('["grip"]', 'a list of 1'),
          allowed: Object.keys(JOBS)
            .map((each) => `"${each}"`)
            .join(', '),
        },
      ])
  })
})

it.each([3, 0, -1, 1.5, '2', null, [2]])('a file of version %j is refused by its path', (version) => {
  expect(faultsOf({ version, whatever: 1 })).toEqual([
    { path: 'version', given: Array.isArray(version) ? 'a list of 1' : JSON.stringify(version), allowed: '1 or 2' },
  ])
})

describe('an edit by a path of version 1', () => {
  const edited = (...edits: [path: string, value: unknown][]): Scenario => make({}, Object.fromEntries(edits))

  it('is made where version 2 has the key', () => {
    expect(edited(['servo.encoderResolution', 3e-6])).toEqual(edited(['sensors.encoder.resolution', 3e-6]))
    expect(edited(['strategies.sensedForce.sensor.drift', 0.4])).toEqual(edited(['sensors.gauge.drift', 0.4]))
    expect(edited(['strategies.sensedForce.sensor', { offset: 1 }])).toEqual(edited(['sensors.gauge', { offset: 1 }]))
  })

  it('of a group finds what lay in it', () => {
    const { servo, sensors, strategies } = edited(
      ['servo', { kp: 5, encoderResolution: 0 }],
      ['strategies', { sensedForce: { target: 9, sensor: { noise: 0.3 } } }],
    )
    expect(servo.kp).toBe(5)
    expect(sensors.encoder.resolution).toBe(0)
    expect(strategies.sensedForce.target).toBe(9)
    expect(sensors.gauge.noise).toBe(0.3)
  })

  it('is refused by the path as written', () => {
    expect(editFaults(['servo.encoderResolution', -1])[0]?.path).toBe('servo.encoderResolution')
    expect(editFaults(['strategies.sensedForce.sensor.colour', 1])[0]?.path).toBe(
      'strategies.sensedForce.sensor.colour',
    )
    expect(editFaults(['strategies.sensedForce', { sensor: { noise: -1 } }])[0]?.path).toBe(
      'strategies.sensedForce.sensor.noise',
    )
    expect(editFaults(['sensors.encoder.resolution', -1])[0]?.path).toBe('sensors.encoder.resolution')
  })

  it('on a file of version 1 works as well, and by both names', () => {
    const checked = editScenario(busy, [
      { path: 'servo.encoderResolution', value: 1e-5 },
      { path: 'sensors.gauge.noise', value: 0.5 },
    ])
    expect(checked.ok && checked.scenario.sensors).toEqual({
      encoder: { resolution: 1e-5, offset: 0 },
      gauge: { ...busy.strategies.sensedForce.sensor, noise: 0.5 },
    })
  })
})

it('reads a key by its path of either version', () => {
  const { servo, strategies } = busy
  const scenario = make(busy)
  expect(readPath(scenario, 'servo.encoderResolution')).toBe(servo.encoderResolution)
  expect(readPath(scenario, 'strategies.sensedForce.sensor')).toEqual(strategies.sensedForce.sensor)
  expect(pathNow('strategies.sensedForce.sensor.noise')).toBe('sensors.gauge.noise')
  expect(pathNow('strategies.sensedForce.sensors')).toBe('strategies.sensedForce.sensors')
})
