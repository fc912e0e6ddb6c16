/** A bench of TypeScript laid over the memory of the compiled core, and read back. */

import base64 from 'virtual:core'
import { describe, expect, it } from 'vitest'
import { compiledCore, PRESETS, STRATEGIES, strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { copyBlock, copyState } from '../../sim/run/mirror.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)

describe('The mirror', () => {
  it.each(STRATEGIES.map((strategy) => [strategy.id, strategy] as const))(
    'gives back what was laid (%s)',
    (_, kind) => {
      for (const { scenario } of PRESETS) {
        const model = modelOf(scenario, kind)
        core.lay(model).change((bench) => expect(bench).toEqual(model.bench))
      }
    },
  )

  it('lays a change down again, arrays included', () => {
    const model = modelOf(PRESETS[0]!.scenario, strategyOf('sensed-force'))
    const running = core.lay(model)
    running.change((bench) => {
      bench.axis.state.travel = 0.0123
      bench.arm.moves = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10)
      bench.drive.gauge.state.filtered = -7
    })
    running.change(({ axis, arm, drive }) => {
      expect(axis.state.travel).toBe(0.0123)
      expect([...arm.moves]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
      expect(drive.gauge.state.filtered).toBe(-7)
    })
  })

  it('outlives a memory that grows', () => {
    const model = modelOf(PRESETS[0]!.scenario, strategyOf('current-clamp'))
    model.bench.recording = 1
    const running = core.lay(model)
    running.begin(2e5) // room for columns of far more than the first pages
    expect(running.bench().record.stride).toBeGreaterThan(2000)
    expect(running.bench().axis.mass).toBe(model.bench.axis.mass)
  })
})

describe('Going on from another state', () => {
  it('copies what moves and leaves the constants', () => {
    const [one, other] = [0.5, 2].map((factor) => {
      const { scenario } = PRESETS[0]!
      const part = { ...scenario.part, stiffness: factor * scenario.part.stiffness }
      return modelOf({ ...scenario, part }, strategyOf('current-clamp'))
    })
    one!.bench.axis.state.travel = 0.004
    const stiffness = other!.bench.load
    copyState(one!.bench, other!.bench)
    expect(other!.bench.axis.state.travel).toBe(0.004)
    expect(other!.bench.load).toBe(stiffness)
    const twin = other!.make()
    copyBlock(other!.bench, twin)
    expect(twin).toEqual(other!.bench)
  })
})
