import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { run } from '../../sim/cli/core.ts'
import { editScenario, METRICS, PRESETS } from '../../sim/index.ts'
import { here } from './here.ts'

const folder = mkdtempSync(join(tmpdir(), 'jawbench-spread-'))
const at = (name: string) => join(folder, name)
const study = at('study.json')
writeFileSync(
  study,
  JSON.stringify({
    ...PRESETS[0]!.scenario,
    run: { duration: 0.6 },
    arm: { gravity: 'across', lift: 0.45, moves: [] },
    spread: {
      varies: [
        { path: 'part.crackForce', law: 'lognormal', factor: 1.25 },
        { path: 'part.mass', law: 'normal', sd: 0.03, share: true },
      ],
    },
    requirements: { holdMargin: { least: 0.5 } },
  }),
)

/** The program in a process of its own, with threads for the work. */
const program = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['.tools/jawbench.mjs', ...args], { encoding: 'utf8' })
  return { status, stdout, stderr }
}

const ASK = ['--grips', '90', '--seed', '4', '--strategy', 'current-clamp', '--drivers', '60', '--tighten', '0.5']

describe('a study on the command line', () => {
  const whole = program('spread', study, ...ASK, '--format', 'json')

  it('says how many hold, what the others fail and what drives it', async () => {
    expect(whole.stderr).toBe('')
    const { results, grips } = JSON.parse(whole.stdout)
    expect(grips).toBe(90)
    const [{ shares, failed, figures, drivers, hash }] = results
    expect(shares.held.count + shares.crushed.count).toBe(90)
    expect(shares.held.low).toBeLessThan(shares.held.share)
    expect(failed.holdMargin.share).toBeGreaterThanOrEqual(0)
    expect(figures.peakForce.quantiles['0.5']).toBeGreaterThan(0)
    expect(drivers[0]).toMatchObject({ path: 'part.crackForce' })
    expect(drivers[0].total.value).toBeGreaterThan(drivers[1].total.value)
    expect(hash).toMatch(/^[0-9a-f]{16}$/)
    const { tighten, tightened } = JSON.parse(whole.stdout)
    expect(tighten).toBe(0.5)
    expect(tightened.map(({ path }: { path: string }) => path)).toEqual(['part.crackForce', 'part.mass'])
    expect(tightened[0].gain.low).toBeLessThanOrEqual(tightened[0].gain.share)
    const { stdout } = await here('spread', study, ...ASK, '--of', 'crushed')
    expect(stdout).toContain(`current-clamp: ${shares.held.count} of 90 hold (`)
    expect(stdout).toMatch(/\(part\.crackForce\) alone makes .* of the breaks, .* grips\)\.\n/)
    expect(stdout).toContain('spread x 0.5: part.mass')
    expect(stdout).toContain('half the scatter')
  })

  it('is the same from pieces in any order, and a piece is the same whenever it is made', async () => {
    const piece = async (name: string, which: string) => {
      expect((await here('spread', study, ...ASK, '--piece', which, '--out', at(name))).status).toBe(0)
      return at(name)
    }
    const [one, two, three] = [await piece('1', '1/3'), await piece('2', '2/3'), await piece('3', '3/3')]
    expect((await here('gather', three, one, two, '--format', 'json')).stdout).toBe(whole.stdout)
    expect(readFileSync(await piece('again', '2/3'), 'utf8')).toBe(readFileSync(two, 'utf8'))

    const refused = async (...files: string[]) => {
      const { status, stdout, stderr } = await here('gather', ...files)
      expect([status, stdout]).toEqual([2, ''])
      return stderr
    }
    expect(await refused(one, three)).toBe('given 2 of 3 pieces, missing 2\n')
    expect(await refused(one, two, three, two)).toContain(`${two}: given piece 2 again`)
    writeFileSync(at('damaged'), readFileSync(two, 'utf8').replace('"piece":2', '"piece":1'))
    expect(await refused(one, at('damaged'), three)).toContain('given a damaged piece')
    writeFileSync(at('half'), readFileSync(two, 'utf8').slice(0, 5000))
    expect(await refused(one, at('half'), three)).toContain('given no whole piece')
    await here('spread', study, ...ASK, '--seed', '5', '--piece', '2/3', '--out', at('foreign'))
    expect(await refused(one, at('foreign'), three)).toContain(
      `${at('foreign')}: given a piece of another study than ${one}`,
    )
    expect(await refused(one, study, three)).toContain('"jawbench-piece"')
  })

  it('lists every part, each of which grips by itself as it did in the study', async () => {
    const { stdout } = await here('spread', study, '--grips', '21', '--strategy', 'current-clamp', '--format', 'csv')
    const rows = Papa.parse<Record<string, string>>(stdout.trim(), { header: true }).data
    expect(rows.map(({ part }) => Number(part))).toEqual(Array.from({ length: 21 }, (_, index) => index))
    const row = rows[20]!
    const scenario = JSON.parse(readFileSync(study, 'utf8'))
    const edited = editScenario(scenario, [
      { path: 'part.crackForce', value: Number(row['part.crackForce']) },
      { path: 'part.mass', value: Number(row['part.mass']) },
      { path: 'run.seed', value: Number(row.seed) },
    ])
    if (!edited.ok) throw new Error('refused')
    const { verdict, metrics } = run(edited.scenario, 'current-clamp').result
    expect(row.verdict).toBe(verdict)
    for (const id of ['peakForce', 'settledForce'] as const) {
      const { unit } = METRICS.find((metric) => metric.id === id)!
      expect(Number(row[`${id} [${unit}]`])).toBe(metrics[id])
    }
  })

  it('refuses what it cannot do, each in a sentence', async () => {
    const refused = async (...args: string[]) => {
      const { status, stdout, stderr } = await here(...args)
      expect([status, stdout], args.join(' ')).toEqual([2, ''])
      return stderr
    }
    expect(await refused('spread', 'teapot')).toContain('spread.varies: given nothing that varies')
    expect(await refused('spread', study, '--grips', '1e9')).toContain('allowed a whole number from 1 to 10000000')
    expect(await refused('spread', study, '--piece', '4/3', '--out', at('x'))).toContain(
      'allowed I/N with I from 1 to N',
    )
    expect(await refused('spread', study, '--piece', '1/3')).toContain('--piece and --out')
    expect(await refused('spread', study, '--drivers', '7')).toContain('allowed 0, or 60 and more')
    expect(await refused('spread', study, '--tighten', '1')).toContain('allowed 0 to less than 1')
    expect(await refused('spread', study, '--of', 'colour')).toContain('allowed failing, held, ')
    expect(await refused('spread', study, '--sampling', 'dice')).toContain('allowed sobol, hypercube, random')
    expect(
      await refused('spread', study, '--piece', '1/1', '--grips', '5', '--out', join(folder, 'no', 'where')),
    ).toContain('cannot be written')
    expect(await refused('map', study, '--x', 'part.mass=1:0.5', '--y', 'servo.kp=1:2')).toContain('FROM below TO')
    expect(await refused('map', study, '--x', 'part.colour=0:1', '--y', 'servo.kp=1:2')).toContain('"part.colour"')
    expect(await refused('tune', 'teapot', '--strategy', 'sensed-force', '--objective', 'share')).toContain(
      'spread.varies',
    )
    expect(await refused('rare', study)).toContain('--strategy: given ""')
  })
})

describe('rare failures and maps on the command line', () => {
  it('give the share, and a file that fails', async () => {
    const { status, stdout } = await here(
      'rare',
      study,
      '--strategy',
      'sensed-force',
      '--level',
      '60',
      '--format',
      'json',
    )
    expect(status).toBe(0)
    const { kind, share, variation, likeliest } = JSON.parse(stdout)
    expect(kind).toBe('share')
    expect(share).toBeGreaterThan(0)
    expect(variation).toBeGreaterThan(0)
    writeFileSync(at('likeliest.json'), JSON.stringify(likeliest))
    const { stdout: grip } = await here('grip', at('likeliest.json'), '--strategy', 'sensed-force', '--format', 'json')
    const [{ verdict, requirements }] = JSON.parse(grip).results
    expect(verdict !== 'held' || requirements.some(({ met }: { met: boolean }) => !met)).toBe(true)
  })

  it('trace where one verdict gives way to another', async () => {
    const axes = ['--x', 'part.crackForce=30:80', '--y', 'part.mass=0.8:1']
    const { stdout } = await here('map', study, ...axes, '--strategy', 'sensed-force', '--format', 'json')
    const { results } = JSON.parse(stdout)
    const [{ borders, cells }] = results
    expect(cells.length).toBeGreaterThan(0)
    const lines = borders.filter(({ classes }: { classes: string[] }) => classes.includes('crushed'))
    const peak = run(editOf('part.crackForce', 1e4), 'sensed-force').result.metrics.peakForce!
    for (const [crack] of lines.flatMap(({ points }: { points: [number, number][] }) => points))
      expect(Math.abs(crack - peak)).toBeLessThan((80 - 30) / 500 + 0.02 * peak) // the peak moves a little with the mass
    expect(lines.length).toBeGreaterThan(0)
  })
})

function editOf(path: string, value: number) {
  const edited = editScenario(JSON.parse(readFileSync(study, 'utf8')), [{ path, value }])
  if (!edited.ok) throw new Error('refused')
  return edited.scenario
}
