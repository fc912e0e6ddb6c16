/** The command line of a press: run, why, presets; what is for grips says so. */
import { describe, expect, it, vi } from 'vitest'
import type { Refused } from '../../sim/cli/command.ts'
import { commands } from '../../sim/cli/commands.ts'
import { core } from '../../sim/cli/core.ts'

async function jawbench(name: string, ...args: string[]): Promise<string> {
  const out = vi.spyOn(process.stdout, 'write').mockReturnValue(true)
  try {
    const status = await commands()
      .find(({ id }) => id === name)!
      .run(args, core)
    expect(status).toBe(0)
    return out.mock.calls.map(([text]) => text).join('')
  } finally {
    out.mockRestore()
  }
}

const refused = (name: string, ...args: string[]) =>
  jawbench(name, ...args).then(
    () => [],
    (error: Refused) => error.lines,
  )

const ONE = ['--strategy', 'current-clamp', '--set', 'run.cycle=null']

describe('the command line of a press', () => {
  it('runs it by its name, with its window above and a sentence below', async () => {
    const table = await jawbench('press', 'cast-arm', ...ONE)
    expect(table).toMatch(
      /^Steel bushing into a cast arm\ndepth 12\.15 mm or more\non the shoulder at least 1900 N, at most 3200 N\n/,
    )
    expect(table).toMatch(/^never more than 3400 N\nband from 100 N to 500 N at 2 mm, to 900 N to 2000 N at 12 mm$/m)
    expect(table).toMatch(/^verdict +seated$/m)
    expect(table).toMatch(/^seating force \[N\] +\d+$/m)
    expect(table).toMatch(/^current-clamp: Seated at 12\.2 mm, /m)
    const [json] = JSON.parse(await jawbench('press', 'cast-arm', ...ONE, '--format', 'json')).results
    expect(json).toMatchObject({ verdict: 'seated', strategy: 'current-clamp' })
    expect(json.metrics.depth).toBeGreaterThan(0.01215)
  })

  it('says why', async () => {
    const table = await jawbench('why', 'lid-hinge', ...ONE)
    expect(table).toMatch(/^The ram sees at most \d+ N, where 260 N are allowed\. /)
    expect(table).toMatch(/^Peak force +\d+(\.\d+)? N +100 %$/m)
  })

  it('lists its presets beside those of grips', async () => {
    const list = await jawbench('presets')
    expect(list).toMatch(/^teapot .+/m)
    expect(list).toMatch(/^cast-arm +Steel bushing into a cast arm\. /m)
    expect(JSON.parse(await jawbench('presets', 'lid-hinge'))).toMatchObject({ job: 'press' })
  })

  it('studies joints, with its own word for those that are done well', async () => {
    const few = [
      'lid-hinge',
      ...ONE,
      '--set',
      'spread.varies=[{"path":"bushing.interference","law":"normal","sd":2e-6}]',
    ]
    const args = [...few, '--grips', '20', '--drivers', '0']
    const table = await jawbench('spread', ...args)
    expect(table).toMatch(/^current-clamp: \d+ of 20 are seated \(/m)
    expect(table).toMatch(/^ {2}depth \[mm\], 1, 50, 99 % +\d/m)
    const csv = await jawbench('spread', ...args, '--format', 'csv')
    expect(csv).toMatch(
      /^part,seed,strategy,verdict,failed,bushing\.interference,contactTime \[s\],.*,ramTravel \[m\]\r\n/,
    )
    expect(csv.trimEnd().split('\r\n')).toHaveLength(21)
  }, 60_000)

  it('prints the schema of a press', async () => {
    const schema = JSON.parse(await jawbench('schema', 'press'))
    expect(schema.properties.job).toMatchObject({ const: 'press' })
    expect(schema.required).toEqual(['job'])
    expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(['bushing', 'bore', 'ram', 'window']))
    expect(await refused('schema', 'weld')).toEqual([
      expect.stringMatching(/^schema: given "weld", allowed grip, press/),
    ])
  })

  it('has its loops before the bore, in the joint and on the shoulder, with what friction holds', async () => {
    const table = await jawbench('loops', 'cast-arm')
    const at = (loop: string) => table.match(new RegExp(`^${loop} +(\\w+) .+ yes$`, 'gm'))
    for (const loop of ['current', 'position', 'velocity', 'force']) expect(at(loop)).toHaveLength(6)
    expect(table).toMatch(
      /^force, sliding: Passed at 30 mm\/s, where the force grows by 124 N\/mm; as soon as it stands/m,
    )
    expect(table).toMatch(
      /^force, nominal: Its friction holds elastically as long as the force swings by no more than/m,
    )
    expect(table).toMatch(/^force, free: No crossover: before the bore the gauge feels nothing but the inertia/m)
  })

  it('is refused by the command of another job in words', async () => {
    expect(await refused('grip', 'cast-arm')).toEqual(['job: given "press", allowed "grip"'])
  })
})
