/** A drive whose encoder reads a constant too much, as after a wrong homing: only where its way ends and where it creeps move. */
import base64 from 'virtual:core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compiledCore, METRICS, type Scenario, STRATEGIES, type StrategyId, simulateGrip } from '../../sim/index.ts'
import { quick } from '../grip/scenarios.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)
const OFFSET = 'sensors.encoder.offset'

const run = (scenario: Scenario, strategy: StrategyId) => simulateGrip(scenario, strategy, { core })

/** No steps: those of an encoder that reads a little more lie elsewhere on the way. */
const smooth = (edits: Record<string, unknown>) =>
  quick({ 'sensors.encoder.resolution': 0, 'approach.creepFrom': 0.0715, 'approach.creepSpeed': 0.02, ...edits })

/** Travels that differ in their last bits touch a step of 10 µs sooner or later now and then: relative, and of a tenth at least. */
const ALIKE = 1e-3
const LEAST = 0.1

function alike(a: Scenario, b: Scenario, strategy: StrategyId): void {
  const [first, second] = [run(a, strategy), run(b, strategy)].map(({ result }) => result)
  expect(first!.verdict).toBe(second!.verdict)
  for (const { id } of METRICS) {
    if (id === 'stepError') continue
    const [one, other] = [first!.metrics[id], second!.metrics[id]]
    if (one === null || other === null) expect(one, id).toBe(other)
    else expect(Math.abs(one - other), id).toBeLessThan(ALIKE * Math.max(LEAST, Math.abs(one)))
  }
}

describe.each(STRATEGIES.map(({ id }) => id))('%s with an encoder that reads d too much', (strategy) => {
  it('grips as with a way that ends d earlier and creeps from d earlier, whatever d', () => {
    // Above -0.75 mm, from which on the zone of the other scenario would begin at the part or behind it, which is no zone.
    const offsets = fc.integer({ min: -14, max: 20 }).map((n) => n * 5e-5)
    fc.assert(
      fc.property(offsets, (d) => {
        // Mirrored jaws: the opening is twice the travel.
        const shifted = { 'approach.overtravel': 0.004 - d, 'approach.creepFrom': 0.0715 + 2 * d }
        alike(
          smooth({ 'approach.overtravel': 0.004, 'events.release': { time: 0.33 }, [OFFSET]: d }),
          smooth({ 'events.release': { time: 0.33 }, ...shifted }),
          strategy,
        )
      }),
      { numRuns: 6, seed: 5 },
    )
  })

  it('touches later by d/v_creep − d/v (closed form), as it creeps so much longer', () => {
    // 5 mm to gather speed, 1 mm to creep; times are known to a period of the servo.
    const creeping = {
      'jaws.opening': 0.082,
      'approach.creepFrom': 0.072,
      'approach.creepSpeed': 0.01,
      'run.duration': 0.6,
      'arm.lift': 0.55,
    }
    const touch = (d: number) => run(smooth({ ...creeping, [OFFSET]: d }), strategy).result.metrics.contactTime!
    const { speed } = smooth({}).approach
    const d = 2e-4
    expect(Math.abs(touch(d) - touch(0) - d * (1 / 0.01 - 1 / speed))).toBeLessThan(2e-4)
  })

  it('never reaches a part that lies beyond the end of its way', () => {
    expect(run(smooth({ 'approach.overtravel': 0.001 }), strategy).result.metrics.contactTime).not.toBeNull()
    expect(run(smooth({ 'approach.overtravel': 0.001, [OFFSET]: 0.002 }), strategy).result.verdict).toBe('missed')
  })

  it('does the same to the last bit compiled as in TypeScript', () => {
    const scenario = quick({ [OFFSET]: -1.3e-4, 'run.duration': 0.3 })
    expect(run(scenario, strategy).result).toEqual(simulateGrip(scenario, strategy).result)
  })
})

it('an axis without an encoder starts with its field where the rotor is', () => {
  const open = (d: number) => {
    const scenario = quick({ 'actuator.family': 'step-screw', 'actuator.motor.openLoop': true, [OFFSET]: d })
    return run(scenario, 'threshold-stop').traces
  }
  const [plain, off] = [open(0), open(5e-4)]
  for (let row = 0; row < 50; row++) {
    expect(off.target[row]).toBeCloseTo(plain.target[row]!, 12)
    expect(off.travel[row]).toBeCloseTo(plain.travel[row]!, 9)
  }
})
