/** The command line of a web: run, presets; what makes no sense on it says so. */
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

describe('the command line of a web', () => {
  it('runs it by its name, with its window above and a sentence below', async () => {
    const table = await jawbench('web', 'tray-film')
    expect(table).toMatch(
      /^Lidding film over trays, by index\ntension 12 N or more from 1\.20 s on\nnever more than 25 N\ntears at 700 N\n/,
    )
    expect(table).toMatch(/^ +current-clamp +sensed-force$/m)
    expect(table).toMatch(/^verdict +taut +taut$/m)
    expect(table).toMatch(/^time constant of the span \[s\] +1\.67 +1\.67$/m)
    expect(table).toMatch(/^current-clamp: Taut from 1\.20 s on: /m)
  })

  it('refuses a threshold stop in words', async () => {
    expect(await refused('web', 'tray-film', '--strategy', 'threshold-stop')).toEqual([
      '--strategy: A threshold stop halts the roll and holds it at that place, and a web that runs needs a roll that goes on turning.',
    ])
  })

  it('lists its presets beside those of grips', async () => {
    const list = await jawbench('presets')
    expect(list).toMatch(/^paper-roll +Packing paper, wound to small rolls\. /m)
    expect(JSON.parse(await jawbench('presets', 'tray-film'))).toMatchObject({ job: 'web' })
  })

  it('has the loops of its gauge roll, standing and running, and how long its span remembers', async () => {
    const table = await jawbench('loops', 'tray-film')
    expect(table).toMatch(/^loop +at +crossover +phase margin +delay margin +gain margin/)
    expect(table.match(/^force +(softest|nominal|stiffest|running) .+ yes$/gm)).toHaveLength(4)
    // L/v of 1 m at 0.6 m/s.
    expect(table).toMatch(/^force, running: A stretch leaves with the web: .+ forgets it within 1670 ms\.$/m)
    expect(table).toMatch(/friction of up to 0\.02 N·m \(0\.0667 A\) holds it like a spring of 40 N·m\/rad/)
    const { workingPoints } = JSON.parse(await jawbench('loops', 'tray-film', '--format', 'json'))
    expect(workingPoints.at(-1)).toMatchObject({
      id: 'running',
      label: 'Nominal web, running',
      speed: expect.any(Number),
    })
  })

  it('is refused by the command of another job in words', async () => {
    expect(await refused('grip', 'tray-film')).toEqual(['job: given "web", allowed "grip"'])
  })
})
