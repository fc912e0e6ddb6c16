import { describe, expect, it } from 'vitest'
import { limitWords } from '../../../../app/read/effort/effort.ts'
import { quantityUnit } from '../../../../app/read/units.ts'
import type { RunView } from '../../../../app/store/results.ts'
import { buildLens, flatLens } from '../../../../app/ui/timeLens.ts'
import { linePath, roomOf, storyOf } from '../../../../app/views/present/story.ts'
import { forceWindow, PRESETS, simulateGrip } from '../../../../sim/index.ts'
import { scenarioOf } from '../../picture/grip/support.ts'

const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!
const { result, traces } = simulateGrip(scenario, 'threshold-stop')
const run: RunView = {
  strategy: 'threshold-stop',
  scenario,
  status: 'done',
  result,
  traces,
  rows: traces.time.length,
  revision: 1,
}

const lens = buildLens({ duration: scenario.run.duration, contacts: [result.metrics.contactTime!], moves: [] })
const room = roomOf({ width: 900, height: 300 }, 18)
const unit = quantityUnit('force', 'si')
const story = storyOf({ runs: [run], scenario, axis: lens, unit, room, text: 18 })
const points = (path: string) =>
  path
    .slice(1)
    .split('L')
    .map((point) => point.split(' ').map(Number) as [number, number])

describe('the force story', () => {
  it('keeps the peak of a line that has more rows than there are pixels', () => {
    const rows = 5000
    const time = Array.from({ length: rows }, (_, i) => i / rows)
    const force = time.map((_, i) => (i === 3333 ? 90 : 10))
    const drawn = points(
      linePath(
        Float64Array.from(time),
        Float64Array.from(force),
        rows,
        (t) => t * 100,
        (f) => 100 - f,
      ),
    )
    expect(Math.min(...drawn.map(([, y]) => y))).toBe(10)
    expect(drawn.length).toBeLessThanOrEqual(4 * 101)
    expect(drawn.map(([x]) => x)).toEqual(drawn.map(([x]) => x).sort((a, b) => a - b))
  })

  it('marks where and when the part cracked, on the edge of the window it crossed', () => {
    const [mark] = story.marks
    expect(mark).toMatchObject({ damage: true, time: result.events.crack })
    expect(mark!.x).toBeCloseTo(lens.toDisplay(result.events.crack!) * room.width, 6)
    expect(Math.abs(mark!.y - story.most[0]!.y)).toBeLessThan(0.01) // [px]: the force of the step that crossed it
    expect(mark!.words).toMatch(/^cracks at 0\.\d+ s$/)
  })

  it('writes what two strategies suffer at once a single time, and what they suffer nearly at once apart', () => {
    const again = (time: number): RunView => ({
      ...run,
      strategy: 'current-clamp',
      result: { ...result, strategy: 'current-clamp', events: { ...result.events, crack: time } },
    })
    const marksWith = (other: RunView) =>
      storyOf({ runs: [run, other], scenario, axis: lens, unit, room, text: 18 }).marks
    expect(marksWith(again(result.events.crack!)).map(({ words }) => words)).toEqual([story.marks[0]!.words, ''])
    const [first, second] = marksWith(again(result.events.crack! + 0.002))
    expect(second!.drop - first!.drop).toBeGreaterThan(18)
  })

  it('has the window in its place and round figures beside it', () => {
    const { least, most } = forceWindow(scenario)
    const [upper, lower] = [story.most[0]!.y, story.least[0]!.y]
    const scale = upper - lower
    const zero = story.figures.find(({ text }) => text === '0')!.y
    expect(zero).toBe(room.height)
    expect((zero - lower) / -scale).toBeCloseTo(least! / (most! - least!), 6)
    expect(story.figures.length).toBeGreaterThanOrEqual(3)
  })

  it('draws nothing of what has not run, and no edge that would dwarf the force', () => {
    expect(
      linePath(
        new Float64Array(),
        new Float64Array(),
        0,
        (t) => t,
        (f) => f,
      ),
    ).toBe('')
    const strong = scenarioOf({ part: { mass: 0.1, markForce: 100_000 } })
    const empty = storyOf({ runs: [run], scenario: strong, axis: flatLens(1), unit, room, text: 18 })
    expect(empty.most).toEqual([])
  })
})

describe('words of the window', () => {
  it('name what happens to the part first', () => {
    const harm = (part: object) => limitWords(scenarioOf({ part }), 'si').most
    expect(harm({ crackForce: 50 })).toMatch(/^breaks above 50/)
    expect(harm({ crackForce: 50, yieldForce: 20 })).toMatch(/^dents above 20/)
    expect(harm({ crackForce: 50, yieldForce: 20, markForce: 8 })).toMatch(/^marks above 8/)
    expect(limitWords(scenario, 'us').least).toContain('lbf')
  })
})
