/** The kind of axis that turns its output, under a job that exists in this test only: a flywheel in free air. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axisOf, isOpenLoop } from '../../sim/axis/reflect.ts'
import { checkScenario, type Scenario } from '../../sim/index.ts'
import { JOBS } from '../../sim/job/index.ts'
import type { Job } from '../../sim/job/job.ts'
import { LoadId } from '../../sim/job/load-id.ts'
import { modelOf } from '../../sim/model/model.ts'
import { channelsOf, tracesOf } from '../../sim/run/channels.ts'
import { runCycle } from '../../sim/run/run.ts'
import { group, quantity } from '../../sim/scenario/quantity.ts'
import { JOBS as FORMATS } from '../../sim/scenario/schema/index.ts'
import { turningKindsOf } from '../../sim/scenario/schema/others.ts'
import { turningApproach } from '../../sim/scenario/schema/turning/approach.ts'
import { strategyOf } from '../../sim/strategy/index.ts'
import { currentFor, forceBand } from '../../sim/strategy/newtons.ts'

const of = (label: string, unit: string, preset: number) =>
  quantity({ label, symbol: 'x', unit, default: preset, range: [0, 1e6], note: `${label} of a flywheel.` })

const approach = group('Approach', {
  ...turningApproach,
  creepFrom: of('Creep', 'rad', 0),
  overtravel: of('Way', 'rad', 200),
})

const FLYWHEEL = 3e-5
const spin = {
  id: 'spin',
  label: 'Spin',
  load: LoadId.free,
  output: { label: 'spindle', travel: 'rad', effort: 'N·m' },
  channels: [],
  outputOf: () => ({ mass: FLYWHEEL, stroke: 1e6, reach: 1e6 }),
  workOf: () => ({
    perEffort: 1,
    touch: 0,
    meets: 0,
    stroke: 1e6,
    creepFrom: Number.POSITIVE_INFINITY,
    travelAt: (place: number) => -place,
    reach: 1e6,
  }),
  fill: () => {},
} as unknown as Job

const registries: [Record<string, unknown>, unknown][] = [
  [FORMATS, turningKindsOf('spin', {}, { approach })],
  [JOBS as unknown as Record<string, unknown>, spin],
]
beforeAll(() => {
  for (const [registry, entry] of registries) registry.spin = entry
})
afterAll(() => {
  for (const [registry] of registries) delete registry.spin
})

function spun(input: object): Scenario {
  const checked = checkScenario({ job: 'spin', ...input })
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

const geared = (changes: object = {}, motor: object = {}) =>
  spun({
    actuator: {
      kind: 'spindle',
      motor: { inertia: 1e-5, torqueConstant: 0.05, ...motor },
      transmission: { gearRatio: 5, efficiency: 0.8, inertia: 2e-5, ...changes },
    },
  })

describe('a spindle', () => {
  it('reflects the rotor by the square of the gear ratio, torque by the ratio, and loses what its efficiency says', () => {
    const seen = axisOf(geared({}, { cogging: { amplitude: 0.01, period: 0.5 }, fullSteps: 200 }).actuator)
    expect(seen.mass).toBeCloseTo(25 * 1e-5 + 2e-5, 15)
    expect(seen.linearMass).toBe(0)
    expect(seen.forcePerAmpere).toBeCloseTo(0.25, 15)
    expect(1 / (1 + seen.raise)).toBeCloseTo(0.8, 12)
    expect(1 - seen.lower).toBeCloseTo(2 - 1 / 0.8, 12) // as of a rack: Niemann and Winter, from memory
    expect(seen.coggingForce).toBeCloseTo(0.05, 15)
    expect(seen.coggingPeriod).toBeCloseTo(0.1, 15)
    expect(seen.cyclePitch).toBeCloseTo((2 * Math.PI) / 50 / 5, 15) // 50 cycles a turn of the motor, a fifth of it at the spindle
  })

  it('is a motor alone where nothing is said of a gear', () => {
    const { actuator } = spun({})
    expect(actuator.kind).toBe('spindle')
    expect(axisOf(actuator)).toMatchObject({ raise: 0, lower: 0, mass: 3e-6 + 2e-5, forcePerAmpere: 0.045 })
  })

  it('turns newton metres into amperes and back, friction and gear loss included', () => {
    const scenario = geared({ coulomb: 0.1, breakaway: 0.12 })
    const current = currentFor(scenario, 2)
    expect(current).toBeCloseTo((2 / 0.8 + 0.1) / 0.25, 12) // closed form
    expect(forceBand(scenario, current).expected).toBeCloseTo(2, 12)
  })

  it('moves no jaw, and a jaw is moved by nothing else', () => {
    const faults = (input: object) => {
      const checked = checkScenario(input)
      return checked.ok ? [] : checked.faults
    }
    expect(faults({ actuator: { kind: 'spindle' } })).toEqual([
      { path: 'actuator.kind', given: '"spindle"', allowed: '"screw", "rack", "direct"' },
    ])
    expect(faults({ job: 'spin', actuator: { kind: 'screw' } })).toEqual([
      { path: 'actuator.kind', given: '"screw"', allowed: '"spindle"' },
    ])
  })

  it('runs without an encoder as a step motor only', () => {
    const checked = checkScenario({ job: 'spin', actuator: { motor: { openLoop: true } } })
    expect(checked.ok ? [] : checked.faults.map(({ allowed }) => allowed)).toEqual([
      'false, unless the family is "step-spindle"',
    ])
    expect(isOpenLoop(spun({ actuator: { family: 'step-spindle', motor: { openLoop: true } } }))).toBe(true)
  })

  it('tells its friction in newton metres', () => {
    const checked = checkScenario({ job: 'spin', actuator: { transmission: { coulomb: 0.5, breakaway: 0.4 } } })
    expect(checked.ok ? [] : checked.faults).toEqual([
      {
        path: 'actuator.transmission.breakaway',
        given: '0.4 N·m',
        allowed: 'at least the Coulomb friction of 0.5 N·m',
      },
    ])
  })

  it('speeds a flywheel up by torque over inertia, in radians', () => {
    const scenario = spun({
      actuator: {
        motor: { inertia: 1e-5, torqueConstant: 0.05, peakCurrent: 9 },
        transmission: { gearRatio: 5, inertia: 2e-5, coulomb: 0, breakaway: 0, viscous: 0 },
      },
      drive: { busVoltage: 400, currentNoise: 0, currentResolution: 0 },
      approach: { speed: 1000, acceleration: 1e5, jerk: 1e9 },
      strategies: { currentClamp: { limit: 2 } },
      run: { duration: 0.1 },
    })
    const model = modelOf(scenario, strategyOf('current-clamp'))
    const { columns } = runCycle(model, { record: true })
    const channels = channelsOf(model.job)
    expect(channels.find(({ id }) => id === 'travel')).toMatchObject({ label: 'spindle travel', unit: 'rad' })
    expect(channels.find(({ id }) => id === 'gauge')?.unit).toBe('N·m')
    const { time, speed } = tracesOf(columns ?? [], channels)
    const at = (wanted: number) => time.findIndex((t) => t >= wanted)
    const [a, b] = [at(0.03), at(0.09)]
    const rate = (speed[b]! - speed[a]!) / (time[b]! - time[a]!)
    // Closed form: n·K_t·I/(n²·J + J_s + J_f). Buckets of the record keep extremes, so the instants are some 0.1 ms off.
    expect(rate / ((5 * 0.05 * 2) / (25 * 1e-5 + 2e-5 + FLYWHEEL))).toBeCloseTo(1, 2)
  })
})
