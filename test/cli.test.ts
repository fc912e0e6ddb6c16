import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CHANNELS, inPlainSpaces, PRESETS, SIMPLIFICATIONS, STRATEGIES, textIn, wordingOf } from '../sim/index.ts'

const folder = mkdtempSync(join(tmpdir(), 'jawbench-'))
const file = (name: string, text: string) => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

function jawbench(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['.tools/jawbench.mjs', ...args], { encoding: 'utf8' })
  return { status, stdout, stderr }
}

describe('jawbench grip', { timeout: 120_000 }, () => {
  it('judges every strategy, whatever the verdict, with exit 0', () => {
    const { status, stdout } = jawbench('grip', 'teapot', '--format', 'json')
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-result', version: 1, step: 1e-5 })
    expect(report.results.map(({ strategy }: { strategy: string }) => strategy)).toEqual(STRATEGIES.map(({ id }) => id))
    expect(report.results[0]).toMatchObject({ verdict: 'crushed', metrics: { slipDistance: expect.any(Number) } })
    expect(report.results[1]).toMatchObject({ verdict: 'held' })
    expect(report.results[1].stepError).toBeLessThan(0.01)
  })

  it('takes a short file, one strategy and any key, and writes traces', () => {
    const out = join(folder, 'traces.csv')
    const short = file('short.json', '{ "part": { "mass": 0.3 } }')
    const run = jawbench('grip', short, '--strategy', 'current-clamp', '--set', 'servo.kp=3200', '--traces', out)
    expect(run.status).toBe(0)
    expect(run.stdout).toContain('current-clamp')
    expect(run.stdout).not.toContain('threshold-stop')
    const lines = readFileSync(out, 'utf8').split('\r\n')
    expect(lines[0]).toBe(CHANNELS.map(({ label, unit }) => `${label} [${unit}]`).join(','))
    expect(lines.length).toBeGreaterThan(1000)
  })

  it('refuses bad input with exit 2 and every fault on stderr', () => {
    const bad = file('bad.json', '{ "part": { "mass": -1, "colour": "red" }, "servo": { "rate": 3333 } }')
    const { status, stdout, stderr } = jawbench('grip', bad)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain('part.mass: given -1, allowed a number from')
    expect(stderr).toContain('part.colour: given an unknown key')
    expect(stderr).toContain('servo.rate: given 3333')
  })

  it.each([
    [['grip', 'nowhere.json'], 'nowhere.json'],
    [['grip'], 'no scenario file was named'],
    [['grip', 'teapot', '--strategy', 'hope'], '--strategy: given "hope"'],
    [['grip', 'teapot', '--set', 'servo.kp'], 'PATH=VALUE'],
    [['grip', 'teapot', '--format', 'xml'], '--format: given "xml"'],
    [['grasp'], 'given "grasp"'],
  ])('refuses %j', (args, message) => {
    const { status, stderr } = jawbench(...args)
    expect(status).toBe(2)
    expect(stderr).toContain(message)
  })

  it('says with exit 3 that the simulation left the range of finite numbers', () => {
    const coarse = ['--set', 'run.step=0.00005', '--set', 'actuator.transmission.stiffness=1e10']
    const { status, stdout } = jawbench('grip', 'teapot', '--strategy', 'current-clamp', ...coarse)
    expect(status).toBe(3)
    expect(stdout).toContain('Leaves its rails at')
  })
})

describe('jawbench presets, schema and loops', { timeout: 120_000 }, () => {
  it('prints a preset as a file that it takes again', () => {
    expect(jawbench('presets').stdout.split('\n').length).toBe(PRESETS.length + 1)
    const text = jawbench('presets', 'bauble').stdout
    expect(JSON.parse(text)).toEqual(PRESETS.find(({ id }) => id === 'bauble')!.scenario)
  })

  it('prints the JSON Schema', () => {
    expect(JSON.parse(jawbench('schema').stdout)).toMatchObject({ type: 'object', additionalProperties: false })
  })

  it('prints the margins of the four loops', () => {
    const { status, stdout } = jawbench('loops', 'teapot', '--format', 'json')
    expect(status).toBe(0)
    const { loops } = JSON.parse(stdout)
    expect(loops.length).toBe(16)
    expect(loops[0]).toMatchObject({ loop: 'current', workingPoint: 'free', phaseMargin: expect.any(Number) })
  })
})

describe('jawbench model', { timeout: 120_000 }, () => {
  it('prints every simplification with its figures, as table and as JSON', () => {
    const { status, stdout } = jawbench('model', 'teapot', '--strategy', 'current-clamp')
    expect(status).toBe(0)
    for (const { title } of SIMPLIFICATIONS) expect(stdout).toContain(inPlainSpaces(textIn(title, wordingOf('si'))))
    const report = JSON.parse(jawbench('model', 'teapot', '--strategy', 'current-clamp', '--format', 'json').stdout)
    expect(report).toMatchObject({ format: 'jawbench-model', version: 1, strategy: 'current-clamp' })
    expect(report.simplifications.map(({ id }: { id: string }) => id)).toEqual(SIMPLIFICATIONS.map(({ id }) => id))
    expect(report.base.peakForce).toBeGreaterThan(0)
  })

  it('refuses an unknown strategy', () => {
    const { status, stderr } = jawbench('model', 'teapot', '--strategy', 'luck')
    expect(status).toBe(2)
    expect(stderr).toContain('--strategy: given "luck"')
  })
})

describe('jawbench why and rescue', { timeout: 120_000 }, () => {
  it('why: causes that add up to the figure, whatever the verdict, with exit 0', () => {
    const { status, stdout } = jawbench('why', 'teapot', '--strategy', 'threshold-stop', '--format', 'json')
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-why', version: 1, strategy: 'threshold-stop', verdict: 'crushed' })
    for (const cause of report.causes)
      expect(cause).toMatchObject({ cause: expect.any(String), force: expect.any(Number), share: expect.any(Number) })
    const sum = report.causes.reduce((total: number, { force }: { force: number }) => total + force, 0)
    expect(sum / report.force).toBeCloseTo(1, 9)
    const table = jawbench('why', 'teapot', '--strategy', 'threshold-stop').stdout
    for (const { label } of report.causes) expect(table).toContain(label)
    expect(table).toContain(report.sentence)
    expect(table).toContain(report.rule)
  })

  it('why: a grip without contact has no causes and says so', () => {
    const slow = ['--set', 'approach.speed=0.001']
    const { status, stdout } = jawbench('why', 'teapot', '--strategy', 'current-clamp', '--format', 'json', ...slow)
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({ verdict: 'missed', force: null, causes: [] })
  })

  it('rescue: one entry a parameter, and the value that it names turns the verdict', () => {
    const asked = ['teapot', '--strategy', 'threshold-stop', '--format', 'json']
    const { status, stdout } = jawbench('rescue', ...asked)
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-rescue', version: 1, verdict: 'crushed' })
    for (const entry of report.rescues) {
      expect(entry).toMatchObject({ path: expect.any(String), from: expect.any(Number) })
      expect(Object.keys(entry)).toEqual(expect.arrayContaining(['path', 'from', 'value', 'change']))
    }
    const { path, value } = report.rescues[0]
    const grip = jawbench('grip', ...asked, '--set', `${path}=${value}`)
    expect(JSON.parse(grip.stdout).results[0].verdict).toBe('held')
    expect(report.rescues.at(-1)).toMatchObject({ value: null, change: null })
  })

  it('rescue: of a held part says what loses it', () => {
    const { status, stdout } = jawbench('rescue', 'bauble', '--strategy', 'current-clamp')
    expect(status).toBe(0)
    expect(stdout).toMatch(/^held; lost from here on:\n/)
    expect(stdout).toMatch(/strategies\.currentClamp\.limit +0\.39 +[\d.]+ +(dropped|slipped)/)
  })

  it.each([
    [['why', 'teapot'], '--strategy: given "", allowed threshold-stop'],
    [['rescue', 'teapot', '--strategy', 'all'], '--strategy: given "all"'],
    [['why', '--strategy', 'current-clamp'], 'no scenario file was named'],
    [['rescue', 'teapot', '--strategy', 'current-clamp', '--format', 'xml'], '--format: given "xml"'],
  ])('refuses %j', (args, message) => {
    const { status, stdout, stderr } = jawbench(...args)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain(message)
  })
})
