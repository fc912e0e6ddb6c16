/** Two keys that must change at once, in whatever order a person types them. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { PRESETS, readPath } from '../../../sim/index.ts'

/** The panel's edits over a fresh store. */
async function panel() {
  vi.resetModules()
  const { useScenario } = await import('../../../app/store/scenario.ts')
  const { edit } = await import('../../../app/parameters/refusal.ts')
  const at = (path: string) => readPath(useScenario.getState().scenario, path)
  const type = (path: string, value: number) => edit(path, value, `${path} ${value}`, true)
  return { useScenario, edit, at, type }
}

let bench: Awaited<ReturnType<typeof panel>>
beforeEach(async () => {
  bench = await panel()
})

afterEach(() => vi.resetModules())

const { part, jaws } = PRESETS[0]!.scenario

describe('a figure that another key stands against', () => {
  it('waits, and goes along with the one that makes room, in one step back', () => {
    const { type, at, useScenario } = bench
    expect(type('part.width', 0.2)).toBe(false)
    expect(at('part.width')).toBe(part.width)
    expect(type('jaws.opening', 0.22)).toBe(true)
    expect([at('part.width'), at('jaws.opening')]).toEqual([0.2, 0.22])
    useScenario.getState().undo()
    expect([at('part.width'), at('jaws.opening')]).toEqual([part.width, jaws.opening])
    expect(useScenario.getState().canUndo).toBe(false)
  })

  it('of three that hang together the order does not matter', () => {
    const { type, at } = bench
    const wanted = { 'drive.currentRate': 21000, 'servo.rate': 7000, 'strategies.sensedForce.rate': 3500 }
    const taken = Object.entries(wanted).map(([path, value]) => type(path, value))
    expect(taken.at(-1)).toBe(true)
    expect(Object.keys(wanted).map(at)).toEqual(Object.values(wanted))
  })

  it('waits on while something else is changed, and is forgotten with an undo or another value', () => {
    const { type, at, useScenario } = bench
    type('part.width', 0.2)
    type('part.mass', 0.5)
    expect(at('part.width')).toBe(part.width)
    type('jaws.opening', 0.25)
    expect(at('part.width')).toBe(0.2)

    useScenario.getState().undo()
    type('part.width', 0.3)
    useScenario.getState().undo()
    type('jaws.opening', 0.35)
    expect(at('part.width'), 'an undo ends the waiting').toBe(part.width)
    type('part.width', 0.5)
    type('part.width', 0.1)
    type('jaws.opening', 0.6)
    expect(at('part.width'), 'the last figure counts').toBe(0.1)
  })

  it('does not wait if it was dragged or stepped there', () => {
    const { edit, type, at } = bench
    expect(edit('part.width', 0.2, 'drag')).toBe(false)
    type('jaws.opening', 0.25)
    expect(at('part.width')).toBe(part.width)
  })
})
