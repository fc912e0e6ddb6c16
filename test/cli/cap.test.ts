/** The command line of a closure: run, why, presets; what is for grips says so. */
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

describe('the command line of a closure', () => {
  it('runs it by its name, with its window above and a sentence below', async () => {
    const table = await jawbench('cap', 'jar-lid', ...ONE)
    expect(table).toMatch(
      /^Lid of 63 mm on a jar of apricots\napplication torque 2\.82 N·m to 4\.86 N·m\nnot before 0\.92 rev on the thread\n/,
    )
    expect(table).toMatch(/^verdict +tight$/m)
    expect(table).toMatch(/^application torque \[N·m\] +3\.\d+$/m)
    expect(table).toMatch(/^current-clamp: Tight: turned on with /m)
    const [json] = JSON.parse(await jawbench('cap', 'jar-lid', ...ONE, '--format', 'json')).results
    expect(json).toMatchObject({ verdict: 'tight', strategy: 'current-clamp' })
    expect(json.metrics.turns).toBeGreaterThan(2 * Math.PI)
  })

  it('says why', async () => {
    const table = await jawbench('why', 'small-lid', ...ONE)
    expect(table).toMatch(/^The head sees at most [\d.]+ N·m, where 2\.93 N·m are allowed\. /)
    expect(table).toMatch(/^Peak torque +[\d.]+ N·m +100 %$/m)
  })

  it('lists its presets beside the others', async () => {
    const list = await jawbench('presets')
    expect(list).toMatch(/^jar-lid +Lid of 63 mm on a jar of apricots\. /m)
    expect(JSON.parse(await jawbench('presets', 'small-lid'))).toMatchObject({ job: 'cap' })
  })

  it('has its loops before the liner, turning on it and at rest there, in rad and N·m', async () => {
    const table = await jawbench('loops', 'small-lid')
    for (const loop of ['current', 'position', 'velocity', 'force'])
      expect(table.match(new RegExp(`^${loop} +(free|sliding|softest|nominal|stiffest) .+ yes$`, 'gm'))).toHaveLength(5)
    expect(table).toMatch(/^force, sliding: Passed at 60 rev\/min, where the torque grows by 1\.98 N·m\/rad; /m)
    expect(table).toMatch(
      /Quick changes meet 1\.98 N·m\/rad, slow ones, to which the liner has time to give way, 1\.3 N·m\/rad\./,
    )
  })

  it('tunes its gains by its own figures', async () => {
    // No gains keep such a margin, so that none but those on the bench are run.
    const wish = ['--strategy', 'current-clamp', '--objective', 'peakTorque', '--phase-margin', '90']
    const report = JSON.parse(await jawbench('tune', 'jar-lid', ...wish, '--format', 'json'))
    expect(report).toMatchObject({ format: 'jawbench-tune', objective: 'peakTorque', margin: 0, sound: 0, best: null })
    expect(report.present).toMatchObject({ sound: false, miss: { kind: 'phase margin' } })
    expect(report.present.peakTorque).toBeGreaterThan(3)
    expect(Object.keys(report.present)).toEqual(expect.arrayContaining(['capTime', 'settledTorque', 'torqueMargin']))
    expect(await refused('tune', 'jar-lid', '--strategy', 'current-clamp', '--objective', 'gripTime')).toEqual([
      '--objective: given "gripTime", allowed capTime, peakTorque, torqueRipple, share',
    ])
    expect(await refused('tune', 'tray-film', '--strategy', 'threshold-stop')).toHaveLength(1)
  })

  it('does not take it for another job', async () => {
    expect(await refused('grip', 'jar-lid')).toEqual(['job: given "cap", allowed "grip"'])
    expect(await refused('cap', 'cast-arm')).toEqual(['job: given "press", allowed "cap"'])
  })
})
