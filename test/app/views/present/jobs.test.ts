/** The customer view of every job: how its runs stand, and their story over time and over what the job is told by. */
import { describe, expect, it } from 'vitest'
import { limitWords } from '../../../../app/read/effort/effort.ts'
import { acrossUnit, overOf } from '../../../../app/read/effort/over.ts'
import { verdictWord } from '../../../../app/read/result/words.ts'
import { effortUnit } from '../../../../app/read/units.ts'
import type { RunView } from '../../../../app/store/results.ts'
import { flatLens } from '../../../../app/ui/timeLens.ts'
import { decidedAt, firstToTell, standingAt, stopsOf } from '../../../../app/views/present/standing.ts'
import { roomOf, type Story, storyOf } from '../../../../app/views/present/story.ts'
import { run } from '../../../../sim/cli/core.ts'
import {
  ALL_PRESETS,
  checkScenario,
  inPlainSpaces,
  jobOf,
  type Scenario,
  type StrategyId,
  shownAs,
  strategiesOn,
  tensionWindow,
} from '../../../../sim/index.ts'

function viewOf(scenario: Scenario, strategy: StrategyId): RunView {
  const { result, traces } = run(scenario, strategy, { traces: true })
  return { strategy, scenario, status: 'done', result, traces, rows: traces.time.length, revision: 1 }
}

const room = roomOf({ width: 900, height: 300 }, 18)

function storyIn(runs: RunView[], overWay: boolean): Story {
  const { scenario } = runs[0]!
  const over = overWay ? overOf(scenario) : null
  return storyOf({
    runs,
    scenario,
    axis: flatLens(scenario.run.duration),
    unit: effortUnit(scenario, 'si'),
    room,
    text: 18,
    over: over && { over, unit: acrossUnit(over, 'si') },
  })
}

const changed = (scenario: Scenario, more: object): Scenario => {
  const checked = checkScenario({ ...scenario, ...more })
  if (!checked.ok) throw new Error(checked.faults[0]?.path)
  return checked.scenario
}

const points = (path: string) =>
  path
    .slice(1)
    .split('L')
    .map((point) => point.split(' ').map(Number) as [number, number])

describe.each([...ALL_PRESETS])('$id', ({ scenario }) => {
  const job = jobOf(scenario)
  const runs = strategiesOn(job).map(({ id }) => viewOf(scenario, id))

  it('stands at its start in words of the job, and has its verdict in the end', () => {
    for (const each of runs) {
      expect(standingAt(each, 0)).toEqual({ word: shownAs(scenario).stage(null, 0), decided: false })
      const end = decidedAt(each)!
      expect(standingAt(each, end - 1e-6).decided).toBe(false)
      expect(standingAt(each, end)).toEqual({ word: verdictWord(each.result!.verdict), decided: true })
    }
    const stops = stopsOf(runs, scenario.run.duration)
    for (const { start } of shownAs(scenario).events(scenario))
      expect(
        stops.some((stop) => stop >= start - 1e-9 && stop - start < 0.004),
        `a stop at ${start}`,
      ).toBe(true)
    expect(runs).toContain(firstToTell(runs))
  })

  it('has a story within its plot, over time and over its way', () => {
    for (const story of [storyIn(runs, false), ...(overOf(scenario) ? [storyIn(runs, true)] : [])]) {
      expect(story.lines.length).toBe(runs.length)
      for (const { path } of story.lines) {
        expect(points(path).length).toBeGreaterThan(20)
        for (const [x, y] of points(path)) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(room.width + 0.1)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(room.height + 0.1)
        }
      }
      expect(story.figures.length).toBeGreaterThanOrEqual(2)
      for (const { x, y } of [...story.least, ...story.most]) {
        expect(x >= 0 && x <= room.width + 0.1).toBe(true)
        expect(y >= 0 && y <= room.height).toBe(true)
      }
    }
  })

  it('says what lies beyond its window, in the unit of its effort', () => {
    const { least, most } = limitWords(scenario, 'us')
    const { symbol } = effortUnit(scenario, 'us')
    const window = job.study.window(scenario)
    for (const [words, edge] of [
      [least, window.least],
      [most, window.most],
    ] as const)
      if (edge === null) expect(words).toBeNull()
      else expect(inPlainSpaces(words!)).toMatch(new RegExp(`^[a-z ]+ (below|above) [\\d ]+(\\.\\d+)? ${symbol}$`))
  })
})

describe('the story of what went wrong', () => {
  const film = ALL_PRESETS.find(({ id }) => id === 'tray-film')!.scenario
  const jar = ALL_PRESETS.find(({ id }) => id === 'jar-lid')!.scenario

  it('marks where a web is stretched, on the edge that it crossed', () => {
    const tight = changed(film, { window: { least: 12, most: 22, from: 1.2 } })
    const stretched = viewOf(tight, 'sensed-force')
    const story = storyIn([stretched], false)
    const [mark] = story.marks
    const over = (stretched.result!.events as unknown as { over: number }).over
    expect(mark).toMatchObject({ damage: true, time: over })
    expect(mark!.words).toMatch(/^is stretched at \d\.\d+ s$/)
    // A row of the record lies up to a tenth of a millisecond before it.
    expect(Math.abs(mark!.y - story.most[0]!.y)).toBeLessThan(1)
    expect(standingAt(stretched, over)).toEqual({ word: 'Stretched', decided: true })
  })

  it('asks a web for its least tension from when it counts, not before', () => {
    const story = storyIn([viewOf(film, 'current-clamp')], false)
    const { from } = tensionWindow(film)
    expect(story.least[0]!.x).toBeCloseTo((room.width * from) / film.run.duration, 6)
    expect(story.most[0]!.x).toBe(0)
  })

  it('marks a stripped thread after its turns', () => {
    const { closure } = jar as unknown as { closure: object }
    const weak = changed(jar, { closure: { ...closure, stripTorque: 3 } })
    const stripped = viewOf(weak, 'current-clamp')
    const { strip, stripTurns } = stripped.result!.events as unknown as { strip: number; stripTurns: number }
    const story = storyIn([stripped], true)
    const [mark] = story.marks
    expect(mark).toMatchObject({ damage: true, time: strip })
    const last = story.across.at(-1)!
    const turns = stripTurns / (2 * Math.PI)
    // The record has a row each 50 µs, in which a closure turns by less than 0.01 of a turn.
    expect(Math.abs(mark!.x / (last.x / Number(last.text)) - turns)).toBeLessThan(0.01)
  })
})
