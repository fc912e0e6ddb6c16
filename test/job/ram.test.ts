/** The wall between axis and job: a small second one, a ram against a spring, goes through all that is not gripping. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { runnerOn } from '../../sim/ask/runner.ts'
import { explain } from '../../sim/ask/why.ts'
import { Refused } from '../../sim/cli/command.ts'
import { commands } from '../../sim/cli/commands.ts'
import { type Scenario, STRATEGIES, strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { sourceCore } from '../../sim/run/core.ts'
import { runCycle } from '../../sim/run/run.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { FRICTIONLESS, IDEAL, merge, scenarioOf, type Tree } from '../checks/support.ts'
import { register } from './ram/job.ts'

let unregister: () => void
beforeAll(() => {
  unregister = register()
})
afterAll(() => unregister())

const run = runnerOn(sourceCore)
const ids = STRATEGIES.map(({ id }) => id)

/** An axis without friction, damped so that a clamp comes to rest. */
const BASE: Tree = {
  ...IDEAL,
  job: 'ram',
  actuator: { transmission: { ...FRICTIONLESS, viscous: 400, threadFriction: 0 } },
  approach: { overtravel: 0.02, speed: 0.02 },
  strategies: { sensedForce: { target: 60 } },
  run: { duration: 1.5 },
}
const ramming = (...changes: Tree[]): Scenario => scenarioOf({}, structuredClone(BASE), ...changes)

describe('A ram against a spring', () => {
  it.each(ids)('is pressed by %s, in a cycle like any other', (id) => {
    const { result, traces, cancelled } = simulate(ramming(), id, { stepError: true })
    expect(result).toMatchObject({ strategy: id, verdict: 'pressed', overloads: [], doubt: null, cause: '' })
    expect(result.metrics.settled).toBeGreaterThan(10)
    expect(result.stepError).toBeLessThan(0.01)
    expect(result.hash).toMatch(/^[0-9a-f]{16}$/)
    expect(Object.keys(traces)).toHaveLength(12)
    expect(cancelled).toBe(false)
  })

  it('carries the clamp current as K·I without friction (closed form)', () => {
    const scenario = ramming()
    const { bench } = runCycle(modelOf(scenario, strategyOf('current-clamp')))
    const push = bench.axis.forcePerAmpere * scenario.strategies.currentClamp.limit
    expect(bench.figures.sums.force / push).toBeCloseTo(1, 2)
    expect(strategyOf('current-clamp').forceOf(scenario).expected).toBeCloseTo(push, 9)
  })

  it('comes to the target of the gauge', () => {
    const { settled } = simulate(ramming(), 'sensed-force').result.metrics
    expect(Math.abs(settled! - 60)).toBeLessThan(0.02 * 60)
  })

  it('is refused by the keys of its own file, and keeps the rules of those that it shares', () => {
    expect(() => ramming({ ram: { gap: -1 } })).toThrow('ram.gap: given -1, allowed a number from 0 to 1 m')
    expect(() => ramming({ part: { mass: 1 } })).toThrow('part: given an unknown key')
    expect(() => ramming({ servo: { rate: 3333 } })).toThrow('servo.rate: given 3333 1/s')
    expect(() => scenarioOf({ ram: {} })).toThrow('ram: given an unknown key')
  })
})

describe('why of a ram', () => {
  const told = (scenario: Scenario, id: (typeof ids)[number]) =>
    explain(scenario, id, run(scenario, id).result.verdict, run)
  const force = (scenario: Scenario, id: (typeof ids)[number]) => simulate(scenario, id).result.metrics.peak!

  const quick = { approach: { speed: 0.1 }, ram: { damping: 200 } }

  it.each(ids)('tells the peak of %s by causes that add up', (id) => {
    const why = told(ramming(quick), id)
    expect(why).toMatchObject({ job: 'ram', verdict: 'pressed', figure: 'peak', bound: 200, run: null })
    expect(why.force).toBe(force(ramming(quick), id))
    expect(why.causes.reduce((sum, cause) => sum + cause.force, 0)).toBeCloseTo(why.force!, 9)
    expect(why.causes.map(({ cause }) => cause)).not.toContain('relaxation')
  })

  it('tells the ram’s own cause behind the touch, by what goes with it', () => {
    const { causes, force: whole } = told(ramming(quick), 'current-clamp')
    const names = causes.map(({ cause }) => cause)
    expect(names.indexOf('damper')).toBe(names.indexOf('momentum') + 1)
    const undamped = force(ramming(quick, { ram: { damping: 0 } }), 'current-clamp')
    expect(causes.find(({ cause }) => cause === 'damper')!.alone).toBe(whole! - undamped)
  })

  it('gives momentum a quick touch, and nothing of one that is slow already', () => {
    const clamped = (speed: number) => told(ramming({ approach: { speed } }), 'current-clamp')
    const momentum = (speed: number) => clamped(speed).causes.find(({ cause }) => cause === 'momentum')?.force ?? 0
    expect(momentum(0.002)).toBe(0)
    expect(momentum(0.1)).toBeGreaterThan(10)
    // Closed form, balance of energy without damping: m·v²/2 + F·x = k·x²/2.
    const { axis } = modelOf(ramming(), strategyOf('current-clamp')).bench
    const push = clamped(0.1).causes[0]!.force
    expect(clamped(0.1).force).toBeLessThan(push + Math.sqrt(push ** 2 + 5e4 * axis.mass * 0.1 ** 2))
  })

  it('asks about the least where it is short, and about nothing where it never touched', () => {
    const short = told(ramming({ ram: { least: 1000, most: 2000 } }), 'sensed-force')
    expect(short).toMatchObject({ verdict: 'short', figure: 'settled', bound: 1000 })
    const missed = told(ramming({ ram: { gap: 0.5 } }), 'sensed-force')
    expect(missed).toMatchObject({ verdict: 'missed', force: null, causes: [] })
    expect(missed.run?.way).toMatchObject({ contact: 0.5, end: 0.05 })
  })
})

describe('the command line of a ram', () => {
  const folder = mkdtempSync(join(tmpdir(), 'jawbench-ram-'))
  const file = join(folder, 'ram.json')
  writeFileSync(file, JSON.stringify(merge(structuredClone(BASE), { name: 'Spring', approach: { speed: 0.1 } })))

  function jawbench(name: string, ...args: string[]): string {
    const out = vi.spyOn(process.stdout, 'write').mockReturnValue(true)
    try {
      const status = commands()
        .find(({ id }) => id === name)!
        .run(args, sourceCore)
      expect(status).toBe(0)
      return out.mock.calls.map(([text]) => text).join('')
    } finally {
      out.mockRestore()
    }
  }

  it('runs it by its name, as table, JSON and traces', () => {
    const table = jawbench('ram', file)
    expect(table).toMatch(/^Spring\nthe spring takes 20\.0 N to 200 N\n/)
    expect(table).toMatch(/^verdict +pressed +pressed +pressed$/m)
    expect(table).toMatch(/^settled force \[N\]( +[\d.]+){3}$/m)
    expect(table).toMatch(/^± peak force \[N\]( +[\d.e-]+){3}$/m)
    expect(table).toMatch(/^sensed-force: It is pressed with 59\.6 N\.$/m)
    const { results } = JSON.parse(jawbench('ram', file, '--format', 'json'))
    expect(results.map(({ strategy }: { strategy: string }) => strategy)).toEqual(ids)
    const { hash, metrics } = simulate(ramming({ approach: { speed: 0.1 } }), ids[0]!).result
    expect(results[0]).toMatchObject({ hash, metrics })
    jawbench('ram', file, '--strategy', 'current-clamp', '--traces', join(folder, 'out.csv'))
    expect(readFileSync(join(folder, 'out.csv'), 'utf8')).toMatch(
      /^time \[s\],force \[N\],current \[A\],.*,ram travel \[m\],/,
    )
  })

  it('says why', () => {
    const table = jawbench('why', file, '--strategy', 'current-clamp')
    expect(table).toMatch(/^The spring sees [\d.]+ N against 200 N\. The setting means [\d.]+ N; /)
    expect(table).toMatch(/^Force that the setting means +[\d.]+ N +[\d.]+ %$/m)
    expect(table).toMatch(/^Momentum of the approach +[\d.]+ N +[\d.]+ % +[-\d.]+ … [-\d.]+ N$/m)
    expect(table).toMatch(/^Peak force +[\d.]+ N +100 %$/m)
    const missed = jawbench('why', file, '--strategy', 'current-clamp', '--set', 'ram.gap=0.4')
    expect(missed).toMatch(/It is missed with 0 N\. The spring begins at 400 mm\./)
  })

  it('does not take it for a grip', async () => {
    const refused = async (name: string, ...args: string[]) => {
      try {
        return await commands()
          .find(({ id }) => id === name)!
          .run(args, sourceCore)
      } catch (error) {
        return (error as Refused).lines
      }
    }
    expect(await refused('grip', file)).toEqual(['job: given "ram", allowed "grip"'])
    expect(await refused('tune', file, '--strategy', 'current-clamp')).toEqual(['job: given "ram", allowed "grip"'])
    expect(await refused('ram', 'teapot')).toEqual(['job: given "grip", allowed "ram"'])
    expect(Refused).toBeDefined()
  })
})
