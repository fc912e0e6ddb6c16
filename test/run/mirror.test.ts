/** A bench of TypeScript laid over the memory of the compiled core, and read back. */

import base64 from 'virtual:core'
import { describe, expect, it } from 'vitest'
import { Block } from '../../sim/core/block.ts'
import { compiledCore, PRESETS, STRATEGIES, simulateGrip, strategyOf } from '../../sim/index.ts'
import type { GripLoad } from '../../sim/job/grip/load.ts'
import { modelOf } from '../../sim/model/model.ts'
import { copyBlock, copyState, Memory } from '../../sim/run/mirror.ts'

const compiled = new WebAssembly.Module(Buffer.from(base64, 'base64'))
const core = compiledCore(new WebAssembly.Instance(compiled).exports)

interface Exports {
  memory: WebAssembly.Memory
  build(load: number, machine: number): number
  reserve(length: number): number
}

/** Every block of a tree with the bytes that its fields take in the order they are declared, and its place in memory. */
function* placed(block: Block, address: number, view: DataView): Generator<{ name: string; size: number; at: number }> {
  let end = 0
  for (const value of Object.values(block)) {
    const size = typeof value === 'number' ? 8 : 4
    end = Math.ceil(end / size) * size
    if (value instanceof Block) yield* placed(value, view.getUint32(address + end, true), view)
    end += size
  }
  yield { name: block.constructor.name, size: end, at: address }
}

/** Sets every number of a tree to one that no block starts from. */
function scramble(block: Block): void {
  const fields = block as Record<string, unknown>
  for (const [name, value] of Object.entries(fields)) {
    if (typeof value === 'number') fields[name] = -123.456
    else if (value instanceof Block) scramble(value)
  }
}

describe.each(STRATEGIES.map((kind) => [kind.id, kind] as const))('The layout (%s)', (_, kind) => {
  const exports = new WebAssembly.Instance(compiled).exports as unknown as Exports
  const model = modelOf(PRESETS[0]!.scenario, kind)
  const address = exports.build(model.load, model.machine)

  it('gives every block the size that the compiler wrote before it', () => {
    const view = new DataView(exports.memory.buffer)
    const blocks = [...placed(model.bench, address, view)]
    expect(blocks.length).toBeGreaterThan(20)
    for (const { name, size, at } of blocks) expect(view.getUint32(at - 4, true), name).toBe(size)
  })

  it('finds in a bench just built what one of TypeScript starts with, though nothing was written', () => {
    const read = model.make()
    scramble(read)
    new Memory(exports.memory, exports.reserve).read(read, address, true)
    expect(read).toEqual(model.make())
  })
})

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

  it('hands out the same rows piece by piece', () => {
    const { scenario } = PRESETS[0]!
    const [here, there] = [undefined, core].map((by) => {
      const chunks: Float64Array[][] = []
      const onChunk = (columns: Float64Array[]) => chunks.push(columns) > 0
      return { ...simulateGrip(scenario, 'current-clamp', { core: by, onChunk }), chunks }
    })
    expect(there!.chunks.length).toBeGreaterThan(8)
    expect(there!.chunks).toEqual(here!.chunks)
    expect(there!.traces).toEqual(here!.traces)
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
    const stiffness = (model: typeof one) => (model!.bench.load as GripLoad).near.wholeStiffness
    const before = stiffness(other)
    expect(before).not.toBe(stiffness(one))
    copyState(one!.bench, other!.bench)
    expect(other!.bench.axis.state.travel).toBe(0.004)
    expect(stiffness(other)).toBe(before)
    const twin = other!.make()
    copyBlock(other!.bench, twin)
    expect(twin).toEqual(other!.bench)
  })
})
