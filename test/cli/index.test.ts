import { spawn, spawnSync } from 'node:child_process'
import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commands } from '../../sim/cli/commands.ts'
import { rescueTable } from '../../sim/cli/rescue.ts'
import { tuneTable } from '../../sim/cli/tune.ts'
import { whyTable } from '../../sim/cli/why.ts'
import {
  ALL_PRESETS,
  CHANNELS,
  inPlainSpaces,
  LONGEST_FILE,
  PRESETS,
  STRATEGIES,
  simplificationsOf,
  textIn,
  wordingOf,
} from '../../sim/index.ts'
import { here } from './here.ts'

const folder = mkdtempSync(join(tmpdir(), 'jawbench-'))
const file = (name: string, text: string) => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

const TOOL = '.tools/jawbench.mjs'

/** The program in a process of its own; `input` is what stands on standard input; `stdio` says where the streams go instead. */
function told(options: { input?: string | Uint8Array; stdio?: [number, number | 'pipe', 'pipe'] }, args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [TOOL, ...args], { encoding: 'utf8', ...options })
  return { status, stdout, stderr }
}

describe('jawbench grip', () => {
  it('judges every strategy, whatever the verdict, with exit 0', () => {
    const { status, stdout } = told({}, ['grip', 'teapot', '--format', 'json'])
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-result', version: 1, step: 1e-5 })
    expect(report.results.map(({ strategy }: { strategy: string }) => strategy)).toEqual(STRATEGIES.map(({ id }) => id))
    expect(report.results[0]).toMatchObject({ verdict: 'crushed', metrics: { slipDistance: expect.any(Number) } })
    expect(report.results[1]).toMatchObject({ verdict: 'held' })
    expect(report.results[1].stepError).toBeLessThan(0.01)
  })

  it('takes a short file, one strategy and any key, and writes traces', async () => {
    const out = join(folder, 'traces.csv')
    const short = file('short.json', '{ "part": { "mass": 0.3 } }')
    const run = await here('grip', short, '--strategy', 'current-clamp', '--set', 'servo.kp=3200', '--traces', out)
    expect(run.status).toBe(0)
    expect(run.stdout).toContain('current-clamp')
    expect(run.stdout).not.toContain('threshold-stop')
    const lines = readFileSync(out, 'utf8').split('\r\n')
    expect(lines[0]).toBe(CHANNELS.map(({ label, unit }) => `${label} [${unit}]`).join(','))
    expect(lines.length).toBeGreaterThan(1000)
  })

  it('refuses bad input with exit 2 and every fault on stderr', () => {
    const bad = file('bad.json', '{ "part": { "mass": -1, "colour": "red" }, "servo": { "rate": 3333 } }')
    const { status, stdout, stderr } = told({}, ['grip', bad])
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
  ])('refuses %j', async (args, message) => {
    const { status, stderr } = await here(...args)
    expect(status).toBe(2)
    expect(stderr).toContain(message)
  })

  it('says with exit 3 that the simulation left the range of finite numbers', () => {
    const coarse = ['--set', 'run.step=0.00005', '--set', 'actuator.transmission.stiffness=1e10']
    const { status, stdout } = told({}, ['grip', 'teapot', '--strategy', 'current-clamp', ...coarse])
    expect(status).toBe(3)
    expect(stdout).toContain('Leaves its rails at')
  })
})

describe('jawbench presets, schema and loops', () => {
  it('prints a preset as a file that it takes again', async () => {
    expect((await here('presets')).stdout.split('\n').length).toBe(ALL_PRESETS.length + 1)
    const text = (await here('presets', 'bauble')).stdout
    expect(JSON.parse(text)).toEqual(PRESETS.find(({ id }) => id === 'bauble')!.scenario)
  })

  it('prints the JSON Schema', async () => {
    expect(JSON.parse((await here('schema')).stdout)).toMatchObject({ type: 'object', additionalProperties: false })
  })

  it('prints the margins of the four loops', async () => {
    const { status, stdout } = await here('loops', 'teapot', '--format', 'json')
    expect(status).toBe(0)
    const { format, version, loops } = JSON.parse(stdout)
    expect([format, version]).toEqual(['jawbench-loops', 1])
    expect(loops.length).toBe(16)
    expect(loops[0]).toMatchObject({ loop: 'current', workingPoint: 'free', phaseMargin: expect.any(Number) })
  })

  it('writes every loop as matrices and as a table of its frequency response', async () => {
    const [models, response] = [join(folder, 'models.json'), join(folder, 'response.csv')]
    expect((await here('loops', 'teapot', '--models', models, '--response', response)).status).toBe(0)
    const { format, loops } = JSON.parse(readFileSync(models, 'utf8'))
    expect(format).toBe('jawbench-loop-models')
    expect(loops).toHaveLength(16)
    const [head, ...rows] = readFileSync(response, 'utf8').trimEnd().split('\r\n')
    expect(head).toMatch(/^loop,working point,frequency \[rad\/s\],/)
    expect(new Set(rows.map((row) => row.split(',').slice(0, 2).join())).size).toBe(16)
    const { status, stdout, stderr } = await here('loops', 'teapot', '--models', join(folder, 'none', 'models.json'))
    expect([status, stdout]).toEqual([2, ''])
    expect(stderr).toMatch(/^--models: .*cannot be written/)
  })
})

describe('jawbench model', () => {
  it('prints every simplification with its figures, as table and as JSON', async () => {
    const { status, stdout } = await here('model', 'teapot', '--strategy', 'current-clamp')
    expect(status).toBe(0)
    for (const { title } of simplificationsOf('grip'))
      expect(stdout).toContain(inPlainSpaces(textIn(title, wordingOf('si'))))
    const report = JSON.parse((await here('model', 'teapot', '--strategy', 'current-clamp', '--format', 'json')).stdout)
    expect(report).toMatchObject({ format: 'jawbench-model', version: 2, strategy: 'current-clamp' })
    expect(report.simplifications.map(({ id }: { id: string }) => id)).toEqual(
      simplificationsOf('grip').map(({ id }) => id),
    )
    expect(report.base.metrics.peakForce).toBeGreaterThan(0)
  })

  it('refuses an unknown strategy', async () => {
    const { status, stderr } = await here('model', 'teapot', '--strategy', 'luck')
    expect(status).toBe(2)
    expect(stderr).toContain('--strategy: given "luck"')
  })
})

describe('jawbench why and rescue', () => {
  it('why: causes that add up to the figure, whatever the verdict, with exit 0', async () => {
    const { status, stdout } = await here('why', 'teapot', '--strategy', 'threshold-stop', '--format', 'json')
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-why', version: 1, strategy: 'threshold-stop', verdict: 'crushed' })
    for (const cause of report.causes)
      expect(cause).toMatchObject({ cause: expect.any(String), force: expect.any(Number), share: expect.any(Number) })
    const sum = report.causes.reduce((total: number, { force }: { force: number }) => total + force, 0)
    expect(sum / report.force).toBeCloseTo(1, 9)
    const table = whyTable({ job: 'grip', ...report }, report.sentence)
    expect(table).not.toContain('±')
    const drawn = report.causes.map((cause: object) => ({ ...cause, error: 0.123 }))
    expect(whyTable({ job: 'grip', ...report, causes: drawn }, '').match(/ N ± 0\.12 /g)).toHaveLength(drawn.length)
    for (const { label } of report.causes) expect(table).toContain(label)
    expect(table).toContain(report.sentence)
    expect(table).toContain(report.rule)
  })

  it('why: a grip without contact has no causes and says so', async () => {
    const slow = ['--set', 'approach.speed=0.001']
    const { status, stdout } = await here('why', 'teapot', '--strategy', 'current-clamp', '--format', 'json', ...slow)
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({ verdict: 'missed', force: null, causes: [] })
  })

  it('rescue: one entry a parameter, and the value that it names turns the verdict', async () => {
    const asked = ['teapot', '--strategy', 'threshold-stop', '--format', 'json']
    const { status, stdout } = await here('rescue', ...asked)
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({ format: 'jawbench-rescue', version: 1, verdict: 'crushed' })
    for (const entry of report.rescues) {
      expect(entry).toMatchObject({ path: expect.any(String), from: expect.any(Number) })
      expect(Object.keys(entry)).toEqual(expect.arrayContaining(['path', 'from', 'value', 'change']))
    }
    const { path, value } = report.rescues[0]
    const grip = await here('grip', ...asked, '--set', `${path}=${value}`)
    expect(JSON.parse(grip.stdout).results[0].verdict).toBe('held')
    expect(report.rescues.at(-1)).toMatchObject({ value: null, change: null })
    const table = rescueTable('grip', report.verdict, report.rescues)
    expect(table).toMatch(/^crushed; each parameter, changed alone, /)
    for (const { sentence } of report.rescues) expect(table).toContain(sentence)
  })

  it('rescue: of a held part says what loses it', async () => {
    const { status, stdout } = await here('rescue', 'bauble', '--strategy', 'current-clamp')
    expect(status).toBe(0)
    expect(stdout).toMatch(/^held, with 12 of 12 seeds of the noise; each parameter, how far it may drift:\n/)
    expect(stdout).toMatch(
      /strategies\.currentClamp\.limit +0\.39 → [\d.]+\n +Held from .* A to .* A.*; at .* A it (slides|slides out)\./,
    )
  })

  it('tune: gains that are sound, among them those on the bench without the integral', async () => {
    const asked = ['tune', 'teapot', '--strategy', 'threshold-stop']
    const { status, stdout } = await here(...asked, '--format', 'json')
    expect(status).toBe(0)
    const report = JSON.parse(stdout)
    expect(report).toMatchObject({
      format: 'jawbench-tune',
      version: 1,
      strategy: 'threshold-stop',
      objective: 'gripTime',
    })
    expect(report.present).toMatchObject({ sound: false, miss: { kind: 'part', verdict: 'crushed' } })
    expect(report.best).toMatchObject({ sound: true, edits: expect.arrayContaining([{ path: 'servo.ki', value: 0 }]) })
    expect(report.tradeOff.length).toBeGreaterThan(1)
    expect(report.sound + report.missed.reduce((sum: number, { count }: { count: number }) => sum + count, 0)).toBe(
      report.tried,
    )
    const { gripTime: time, peakForce: peak, forceRipple: ripple, ...present } = report.present
    const plain = { ...present, time, peak, ripple, settled: null, spare: null }
    const table = tuneTable('grip', { present: plain, best: null, tradeOff: [] }, report)
    expect(table).toContain(`${report.tried} sets of gains tried, ${report.sound} sound.`)
    expect(table).toContain('The gains on the bench are not sound: softest part crushed.')
  })

  it.each([
    ['why', 'Never touches the part within 0.0500 s.'],
    ['rescue', 'missed; each parameter, changed alone, what it costs and what it does:'],
    ['tune', 'sets of gains tried, 0 sound.'],
  ])('%s: prints a table unless it is asked for JSON', async (command, line) => {
    const never = ['--set', 'run.duration=0.05', '--set', 'arm.moves=[]']
    const { status, stdout } = await here(command, 'teapot', '--strategy', 'threshold-stop', ...never)
    expect(stdout).toContain(line)
    expect(status).toBe(0)
  })

  it.each([
    [['why', 'teapot'], '--strategy: given "", allowed threshold-stop'],
    [['rescue', 'teapot', '--strategy', 'all'], '--strategy: given "all"'],
    [['why', '--strategy', 'current-clamp'], 'no scenario file was named'],
    [
      ['tune', 'teapot', '--strategy', 'current-clamp', '--objective', 'luck'],
      '--objective: given "luck", allowed gripTime',
    ],
    [['tune', 'teapot', '--strategy', 'current-clamp', '--spread', '2'], '--spread: given "2", allowed 0 to 0.9'],
    [['rescue', 'teapot', '--strategy', 'current-clamp', '--format', 'xml'], '--format: given "xml"'],
  ])('refuses %j', async (args, message) => {
    const { status, stdout, stderr } = await here(...args)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain(message)
  })
})

describe('the usage text', () => {
  it('names every command, for help and after a command that is not there', async () => {
    const { status, stdout } = await here('help')
    expect(status).toBe(0)
    for (const { id, does } of commands()) {
      expect(stdout).toContain(`jawbench ${id}`)
      expect(stdout).toContain(does)
    }
    const unknown = await here('constructor')
    expect(unknown.status).toBe(2)
    expect(unknown.stderr).toBe(
      `given "constructor", allowed ${commands()
        .map(({ id }) => id)
        .join(', ')}\n${stdout}`,
    )
  })

  it('stands in the README, call by call', () => {
    const readme = readFileSync('README.md', 'utf8')
    for (const { id, takes } of commands()) expect(readme).toContain(`npm run -s jawbench -- ${id} ${takes}`.trim())
  })
})

describe('what comes in', () => {
  it.each(commands().filter(({ id }) => !['gather', 'fit'].includes(id)))(
    '$id refuses one argument too many',
    async ({ id }) => {
      const { status, stderr } = await here(id, 'teapot', 'teapot')
      expect(stderr).toMatch(/^unexpected argument "teapot"\n/)
      expect(status).toBe(2)
    },
  )

  it('a seed is a whole number of 32 bits', async () => {
    for (const seed of ['4294967296', '-1', '0.5']) {
      const { status, stderr } = await here('spread', 'teapot', '--grips', '1', `--seed=${seed}`)
      expect(stderr, seed).toContain('--seed')
      expect(status).toBe(2)
    }
  })

  const MARK = '\uFEFF'
  const GRIP = ['grip', '--strategy', 'current-clamp', '--format', 'json']

  it('may begin with a byte-order mark, in a file and on standard input', async () => {
    const text = `${MARK}{ "part": { "mass": -1 } }`
    for (const { status, stderr } of [
      await here('grip', file('bom.json', text)),
      told({ input: text }, ['grip', '-']),
    ]) {
      expect(stderr).toBe('part.mass: given -1, allowed a number from 0.00001 to 200 kg\n')
      expect(status).toBe(2)
    }
    expect(told({ input: `${MARK}{}` }, [...GRIP, '-']).status).toBe(0)
  })

  it('is refused when it is longer than a scenario may be, also without an end', async () => {
    const long = file('long.json', ' '.repeat(LONGEST_FILE + 1))
    const refusal = `given more than ${LONGEST_FILE} bytes, allowed at most that\n`
    expect(await here('grip', long)).toEqual({ status: 2, stdout: '', stderr: `${long}: ${refusal}` })
    expect(told({ input: ' '.repeat(3 * LONGEST_FILE) }, ['grip', '-']).stderr).toBe(`-: ${refusal}`)
    if (existsSync('/dev/zero')) expect((await here('grip', '/dev/zero')).stderr).toBe(`/dev/zero: ${refusal}`)
  })

  it('may be of version 1, with --set by its own paths; a version that is to come is refused', async () => {
    const first = file('first.json', '{ "version": 1, "servo": { "encoderResolution": 1e-5 } }')
    const { status, stdout } = await here(...GRIP, first, '--set', 'strategies.sensedForce.sensor.noise=0.1')
    const now = file('now.json', '{ "sensors": { "encoder": { "resolution": 1e-5 }, "gauge": { "noise": 0.1 } } }')
    expect(status).toBe(0)
    expect(stdout).toBe((await here(...GRIP, now)).stdout)
    expect(await here('grip', file('third.json', '{ "version": 3 }'))).toEqual({
      status: 2,
      stdout: '',
      stderr: 'version: given 3, allowed 1 or 2\n',
    })
  })

  it.each([
    ['servo.kp.=1', 'servo.kp.: given no path'],
    ['arm.moves[-1].start=1', 'arm.moves[-1].start: given no path'],
    ['arm.moves[4000000000]=1', 'arm.moves[4000000000]: given no path'],
    ['arm.moves[999999999]=1', 'arm.moves[999999999]: given the index 999999999, allowed an index from 0 to 2'],
    ['arm.moves.length=1e9', 'arm.moves.length: given the key length of a list'],
    ['arm.moves.push=1', 'arm.moves.push: given the key push of a list'],
    ['constructor=1', 'constructor: given an unknown key'],
    ['__proto__.kp=1', '__proto__.kp: given a path through __proto__'],
  ])('--set %s is refused by name', async (set, message) => {
    const { status, stderr } = await here(...GRIP, 'teapot', '--set', set)
    expect(stderr).toContain(message)
    expect(status).toBe(2)
  })
})

describe('what goes out', () => {
  it('ends quietly when nobody reads on', async () => {
    const child = spawn(process.execPath, [TOOL, 'schema'], { stdio: ['ignore', 'pipe', 'pipe'] })
    child.stdout.destroy()
    let said = ''
    child.stderr.on('data', (data) => {
      said += data
    })
    const status = await new Promise((resolve) => child.on('close', resolve))
    expect(said).toBe('')
    expect(status).toBe(0)
  })

  it('is refused in one sentence where it finds no room', async ({ skip }) => {
    if (!existsSync('/dev/full')) skip('this system has no /dev/full')
    const grip = ['grip', 'bauble', '--strategy', 'current-clamp', '--traces']
    expect(await here(...grip, '/dev/full')).toEqual({
      status: 2,
      stdout: '',
      stderr: '--traces: /dev/full cannot be written, no space left on device\n',
    })
    const full = openSync('/dev/full', 'w')
    const { status, stderr } = told({ stdio: [0, full, 'pipe'] }, ['presets'])
    closeSync(full)
    expect(stderr).toBe('standard output cannot be written, no space left on device\n')
    expect(status).toBe(2)
  })

  it('is refused in one sentence where there is no folder', async () => {
    const nowhere = join(folder, 'none', 'traces.csv')
    const { status, stderr } = await here('grip', 'bauble', '--strategy', 'current-clamp', '--traces', nowhere)
    expect(stderr).toBe(`--traces: ${nowhere} cannot be written, no such file or directory\n`)
    expect(status).toBe(2)
  })
})
