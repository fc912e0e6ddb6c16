import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { here } from './here.ts'

const folder = mkdtempSync(join(tmpdir(), 'jawbench-fit-'))
const at = (name: string) => join(folder, name)

const written = (name: string, text: string) => {
  writeFileSync(at(name), text)
  return at(name)
}

/** A grip of the opening preset as a log, and the file before the fit: another stiffness, another width. */
const STILL = ['--set', 'arm.moves=[]', '--set', 'run.duration=0.8', '--set', 'drive.currentNoise=0']
const WRONG = ['--set', 'part.stiffness=100000', '--set', 'part.width=0.1175']
const trace = at('trace.csv')
const grip = await here('grip', 'teapot', '--strategy', 'current-clamp', ...STILL, '--traces', trace)

const rows = (line: (t: number) => string) => Array.from({ length: 400 }, (_, k) => line(k / 1000)).join('\n')

describe('a fit on the command line', { timeout: 120_000 }, () => {
  it('finds the part that a trace has met', async () => {
    expect(grip.status).toBe(0)
    const out = at('fitted.json')
    const { status, stdout } = await here(
      'fit',
      'teapot',
      trace,
      ...STILL,
      ...WRONG,
      '--free',
      'part.width,part.stiffness,part.damping',
      '--format',
      'json',
      '--out',
      out,
    )
    expect(status).toBe(0)
    const { values, residuals, untold, scenario } = JSON.parse(stdout)
    const { part } = JSON.parse((await here('presets', 'teapot')).stdout)
    expect(values.map(({ path }: { path: string }) => path)).toEqual(['part.width', 'part.stiffness', 'part.damping'])
    expect(values[0].from).toBe(0.1175)
    // The trace keeps the extremes of short spans, not their instants.
    expect(Math.abs(values[0].value - part.width)).toBeLessThan(2e-5)
    expect(Math.abs(values[1].value / part.stiffness - 1)).toBeLessThan(0.05)
    expect(values[1].low).toBeLessThan(values[1].value)
    expect(values[1].high).toBeGreaterThan(values[1].value)
    const force = residuals.find(({ channel }: { channel: string }) => channel === 'force')
    expect(force.relative).toBeLessThan(0.05)
    expect(force.rms).toBeLessThan(force.before)
    expect(Array.isArray(untold)).toBe(true)
    expect(JSON.parse(readFileSync(out, 'utf8'))).toEqual(scenario)
  })

  it.each([
    ['press', 'cast-arm', 'ram.gap=0.0212', 'ram.gap', 0.02, 2e-4],
    ['cap', 'jar-lid', 'liner.stiffness=300000', 'liner.stiffness', 4e5, 8e3],
    ['web', 'tray-film', 'web.slack=0.014', 'web.slack', 0.01, 3e-4],
  ] as const)('finds what a trace of a %s has met', async (job, preset, wrong, path, truth, within) => {
    const quiet = ['--set', 'drive.currentNoise=0', '--set', 'run.cycle=null']
    const own = at(`${job}.csv`)
    const ran = await here(job, preset, '--strategy', 'current-clamp', ...quiet, '--traces', own)
    expect(ran.status, ran.stderr).toBe(0)
    const { status, stdout, stderr } = await here('fit', preset, own, ...quiet, '--set', wrong, '--format', 'json')
    expect(status, stderr).toBe(0)
    const { values } = JSON.parse(stdout)
    const found = values.find((value: { path: string }) => value.path === path)
    expect(Math.abs(found.value - truth)).toBeLessThan(within)
  })

  it('refuses a log of angles for an axis that goes straight, and keeps friction under that at rest', async () => {
    const turned = written('turns.csv', `time [s],position [rad],current [A]\n${rows((t) => `${t},${t * t},${t}`)}`)
    const { status, stderr } = await here('fit', 'cast-arm', turned)
    expect(status).toBe(2)
    expect(stderr).toContain('its column “position” is an angle, and the output of this axis goes straight')
    const wrong = ['--set', 'drive.currentNoise=0', '--set', 'bushing.interference=8e-6']
    const free = ['--free', 'joint.friction.pressing', '--format', 'json']
    const fitted = await here('fit', 'cast-arm', at('press.csv'), ...wrong, ...free)
    expect(fitted.status, fitted.stderr).toBe(0)
    expect(JSON.parse(fitted.stdout).values[0].value).toBeLessThanOrEqual(0.12)
  })

  it('refuses a log of ways for an axis that turns', async () => {
    const own = written('ways.csv', `time [s],position [mm],current [A]\n${rows((t) => `${t},${t * t},${t}`)}`)
    const { status, stderr } = await here('fit', 'jar-lid', own)
    expect(status).toBe(2)
    expect(stderr).toContain('its column “position” is a length, and the output of this axis turns')
  })

  const HEAD = 'time [s],reference [m],position [m],current [A]\n'

  it.each([
    ['nothing moves', `${HEAD}${rows((t) => `${t},0.01,0.01,${0.1 * Math.sin(t)}`)}`, 'nothing moves in it'],
    [
      'another axis',
      `${HEAD}${rows((t) => `${t},${0.02 * Math.sin(9 * t)},${0.02 * Math.sin(9 * t)},${Math.cos(300 * t)}`)}`,
      'does not describe this axis',
    ],
    [
      'nothing to be held against',
      `time [s],reference [m],position [m]\n${rows((t) => `${t},${0.02 * Math.sin(9 * t)},${0.02 * Math.sin(9 * t)}`)}`,
      'no current, command, voltage or force',
    ],
  ])('refuses a log in which %s, in a sentence', async (name, text, said) => {
    const { status, stdout, stderr } = await here('fit', 'teapot', written(`${name}.csv`, text))
    expect(stderr).toContain(said)
    expect(status).toBe(2)
    expect(stdout).toBe('')
  })

  it.each([
    [['teapot'], 'no log was named'],
    [['teapot', trace, '--free', 'part.colour'], 'part.colour'],
    [['teapot', trace, '--part', 'maybe'], '--part'],
    [['teapot', trace, '--origin', 'here'], '--origin'],
    [['teapot', join(folder, 'none.csv')], 'none.csv'],
  ])('refuses %j', async (args, said) => {
    const { status, stderr } = await here('fit', ...args)
    expect(status).toBe(2)
    expect(stderr).toContain(said)
  })

  it('fits a measured frequency response', async () => {
    // A mass alone, 10 m/s² for each ampere (56.5 N/A on 5.65 kg), seen 1 ms late: 10/ω at −90° and 0.36° for each Hz.
    const points = Array.from({ length: 40 }, (_, k) => 5 * 10 ** (k / 39))
    const text = points.map((f) => `${f};${10 / (2 * Math.PI * f)};${-90 - 0.36 * f}`).join('\n')
    const file = written('response.csv', `Frequency (Hz);Gain;Phase (deg)\n${text}\n`)
    const { status, stdout } = await here('fit', 'teapot', file, '--response', 'speed', '--format', 'json')
    expect(status).toBe(0)
    const { values, resonance, used } = JSON.parse(stdout)
    const value = (path: string) => values.find((each: { path: string }) => each.path === path).value
    expect(used).toBe(40)
    // 5.655 kg less 4.737 kg of the motor's inertia behind the lead and twice 0.18 kg of jaw.
    expect(value('actuator.transmission.carriageMass')).toBeCloseTo(0.557, 2)
    expect(resonance).toBeNull()
    expect(value('log.delay')).toBeGreaterThan(0.0005)
    expect(value('log.delay')).toBeLessThan(0.0011)

    const { stdout: told } = await here('fit', 'teapot', file, '--response', 'speed')
    const { low, high } = values.find((each: { path: string }) => each.path === 'log.delay')
    const [, from, to] = /^log\.delay .* (\S+) to (\S+) +s$/m.exec(told)!.map(Number)
    expect(from! / low).toBeCloseTo(1, 2)
    expect(to! / high).toBeCloseTo(1, 2)
  })

  it('refuses --response without what it needs', async () => {
    const { status, stderr } = await here(
      'fit',
      'teapot',
      written('one.csv', 'time [s],position [m]\n0,0\n1,1\n2,2\n'),
      '--response',
      'speed',
    )
    expect(status).toBe(2)
    expect(stderr).toContain('one.csv')
  })
})
