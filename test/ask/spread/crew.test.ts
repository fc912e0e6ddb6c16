import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answer, answering, crewOf, type Hand, type Telling } from '../../../sim/ask/spread/crew.ts'
import { allBatches, runSpread } from '../../../sim/ask/spread/run.ts'
import { emptyTally, tallyText } from '../../../sim/ask/spread/tally.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { core, run } from '../../../sim/cli/core.ts'
import { Refusal } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

/** A hand that answers after a few turns of the event loop, and is lost with the tellings of the given numbers. */
class Slow implements Hand {
  static told = 0
  readonly answer = answering(run, core)
  readonly dies: (telling: number) => boolean
  readonly wait: number
  constructor(dies: (telling: number) => boolean, wait: number) {
    this.dies = dies
    this.wait = wait
  }
  async tell(telling: Telling): Promise<Answer> {
    const number = Slow.told++
    for (let turn = 0; turn < this.wait; turn++) await null
    if (this.dies(number)) throw new Error('lost')
    return structuredClone(this.answer(structuredClone(telling)))
  }
  rest() {}
  rouse() {}
}

/** A hand that takes its items in turn; the first time that it comes to one that kills, it is lost with all that waits behind. */
class Mortal implements Hand {
  private readonly kills: Set<unknown>
  private line: Promise<unknown> = Promise.resolve()
  private lost = false
  constructor(kills: Set<unknown>) {
    this.kills = kills
  }
  tell({ item }: Telling): Promise<Answer> {
    const turn = this.line.then((): Answer => {
      this.lost ||= this.kills.delete(item)
      if (this.lost) throw new Error('lost')
      return { kind: 'result', result: item }
    })
    this.line = turn.catch(() => null)
    return turn
  }
  rest() {}
  rouse() {}
}

const study = {
  scenario: quick({ 'spread.varies': [{ path: 'part.mass', law: 'uniform', half: 0.3, share: true }] }),
  strategies: ['current-clamp' as const],
  grips: 100,
  seed: 3,
  sampling: 'sobol' as const,
}
const texts = (tallies: ReturnType<typeof emptyTally>[]) => JSON.stringify(tallies.map(tallyText))

describe('a crew', async () => {
  const alone = texts(await runSpread(study, crewHere(run)))

  it('counts the same however many hands there are and in whatever order they answer', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.nat(9), { minLength: 1, maxLength: 4 }), async (waits) => {
        let hired = 0
        const crew = crewOf(waits.length, () => new Slow(() => false, waits[hired++ % waits.length]!))
        crew.ready()
        expect(hired).toBe(waits.length)
        expect(texts(await runSpread(study, crew))).toBe(alone)
        expect(hired).toBe(waits.length)
      }),
      { numRuns: 5, seed: 1 },
    ))

  it('has the item of a hand that is lost done by another, and gives up the second time', async () => {
    Slow.told = 0
    let hired = 0
    const once = crewOf(2, () => new Slow((telling) => telling === 1, ++hired))
    expect(texts(await runSpread(study, once))).toBe(alone)
    expect(hired).toBe(3)
    await expect(
      runSpread(
        study,
        crewOf(2, () => new Slow(() => true, 1)),
      ),
    ).rejects.toThrow('lost')
  })

  it('blames the item that a hand was lost at, and none that waited behind it', async () => {
    const items = Array.from({ length: 12 }, (_, n) => n)
    for (const size of [1, 2, 3]) {
      const kills = new Set<unknown>(items.filter((item) => item % 2 === 0))
      const done: unknown[] = []
      // The task is never looked at by these hands.
      await crewOf(size, () => new Mortal(kills)).work('batch' as never, {} as never, items as never, (result) => {
        done.push(result)
        return true
      })
      expect(done.sort((a, b) => Number(a) - Number(b))).toEqual(items)
      expect(kills.size).toBe(0)
    }
  })

  it('stops when nobody wants to go on, and is of use afterwards', async () => {
    const crew = crewOf(2, () => new Slow(() => false, 2))
    const [some] = await runSpread(study, crew, ({ done }) => done < 2)
    expect(some!.batches.size).toBe(2)
    expect(texts(await runSpread(study, crew))).toBe(alone)
    expect(await runSpread(study, crew, undefined, [])).toEqual([emptyTally('grip', 'current-clamp', 1)])
    expect(allBatches(study)).toHaveLength(5)
  })

  it('passes a refusal on, and what goes wrong where its results are taken', async () => {
    const varies = ['part.mass', 'part.width', 'part.stiffness'].map((path) => ({
      path,
      law: 'normal',
      sd: 0.01,
      share: true,
    }))
    const pairs = [
      [0, 1, 0.9],
      [1, 2, 0.9],
      [0, 2, -0.9],
    ] as const
    const together = pairs.map(([a, b, correlation]) => ({ paths: [varies[a]!.path, varies[b]!.path], correlation }))
    const scenario = quick({ 'spread.varies': varies, 'spread.together': together })
    const crew = crewOf(2, () => new Slow(() => false, 1))
    await expect(runSpread({ ...study, scenario }, crew)).rejects.toThrow(Refusal)
    const told = () => {
      throw new Error('not taken')
    }
    await expect(runSpread(study, crew, told)).rejects.toThrow('not taken')
  })
})
