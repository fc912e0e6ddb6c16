import { describe, expect, it } from 'vitest'
import { CHANNELS, type Scenario, STRATEGIES, simulateGrip, type Traces } from '../../sim/index.ts'
import { quick } from '../grip/scenarios.ts'

const IDS = STRATEGIES.map(({ id }) => id)
const bytes = (traces: Traces) => CHANNELS.map(({ id }) => Buffer.from(traces[id].buffer).toString('base64'))

describe.each(IDS)('simulateGrip, %s', (id) => {
  it('gives the same run to the last bit from the same scenario, whatever ran before', () => {
    const first = simulateGrip(quick(), id)
    simulateGrip(quick({ 'part.exponent': 1.5, 'part.stiffness': 1e8, 'run.seed': 9 }), id)
    const again = simulateGrip(quick(), id)
    expect(bytes(again.traces)).toEqual(bytes(first.traces))
    expect(again.result).toEqual(first.result)
  })

  it('gives another run from another seed, with the same outcome', () => {
    const one = simulateGrip(quick(), id)
    const other = simulateGrip(quick({ 'run.seed': 2 }), id)
    expect(bytes(other.traces)).not.toEqual(bytes(one.traces))
    expect(other.result.hash).not.toBe(one.result.hash)
    expect(other.result.verdict).toBe(one.result.verdict)
    // The noise is a thousandth of the force.
    expect(Math.abs(other.result.metrics.settledForce! / one.result.metrics.settledForce! - 1)).toBeLessThan(0.002)
  })

  it('does not depend on the seed where nothing is noisy', () => {
    const quiet = { 'drive.currentNoise': 0, 'sensors.gauge.noise': 0 }
    const one = simulateGrip(quick(quiet), id)
    const other = simulateGrip(quick({ ...quiet, 'run.seed': 2 }), id)
    expect(other.result.hash).toBe(one.result.hash)
  })

  it('leaves its scenario untouched', () => {
    const scenario = quick()
    const before = JSON.stringify(scenario)
    simulateGrip(freeze(scenario), id)
    expect(JSON.stringify(scenario)).toBe(before)
  })

  it('hands out its traces in chunks while it runs', () => {
    const chunks: Float64Array[][] = []
    const { traces, cancelled } = simulateGrip(quick(), id, {
      onChunk: (columns) => {
        chunks.push(columns)
        return true
      },
    })
    expect(cancelled).toBe(false)
    expect(chunks.length).toBeGreaterThan(5)
    CHANNELS.forEach(({ id: channel }, c) => {
      expect(chunks.flatMap((columns) => [...columns[c]!])).toEqual([...traces[channel]])
    })
  })

  it('stops as soon as the receiver of the chunks asks for it', () => {
    let chunks = 0
    const { traces, cancelled, result } = simulateGrip(quick(), id, {
      stepError: true,
      onChunk: () => ++chunks < 2,
    })
    expect(cancelled).toBe(true)
    expect(chunks).toBe(2)
    expect(traces.time.at(-1)).toBeLessThan(0.2)
    expect(result.stepError).toBeNull()
  })
})

describe('a duty', () => {
  const duty = () => quick({ 'run.cycle': 2 })

  it('tells how far it is, all its runs and those at half the step included', () => {
    const told: number[] = []
    const onProgress = (done: number) => told.push(done) > 0
    const { result } = simulateGrip(duty(), 'current-clamp', { stepError: true, onProgress })
    expect(told.length).toBeGreaterThanOrEqual(6) // of each of three steps a cycle at least that finds the duty, and the run
    expect(told).toEqual([...new Set(told)].sort((a, b) => a - b))
    expect(told[0]).toBeLessThanOrEqual(1 / 15)
    expect(told.at(-1)).toBeCloseTo(1, 12)
    expect(result).toEqual(simulateGrip(duty(), 'current-clamp', { stepError: true }).result)
  })

  it('stops in the first of its runs when it is asked to', () => {
    let told = 0
    const { cancelled } = simulateGrip(duty(), 'current-clamp', { stepError: true, onProgress: () => ++told < 1 })
    expect(cancelled).toBe(true)
    expect(told).toBe(1)
  })
})

describe('simulateGrip', () => {
  it('refuses a strategy that it does not know', () => {
    expect(() => simulateGrip(quick(), 'squeeze' as never)).toThrow(RangeError)
  })

  it('tells its step', () => {
    expect(simulateGrip(quick({ 'run.duration': 0.02, 'arm.lift': null }), 'current-clamp').result.step).toBeCloseTo(
      1e-5,
      15,
    )
  })

  it('is symmetric: mirrored jaws press a part in their middle alike', () => {
    const { traces } = simulateGrip(quick(), 'current-clamp')
    expect([...traces.farForce]).toEqual([...traces.force])
    expect(traces.partShift.every((shift) => shift === 0)).toBe(true)
  })
})

function freeze(scenario: Scenario): Scenario {
  const deep = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    Object.freeze(value)
    for (const inner of Object.values(value)) deep(inner)
  }
  deep(scenario)
  return scenario
}
