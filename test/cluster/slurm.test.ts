/** A study carried by a real batch scheduler: an array of pieces, one of which is killed and run again, joined to the uncut answer. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { PRESETS } from '../../sim/index.ts'
import { hindrance, startCluster, until } from './node.ts'

const PIECES = 4
const TOOL = join(process.cwd(), '.tools/jawbench.mjs')

it('is the same, carried by a cluster in pieces of which one was killed', async (context) => {
  const why = hindrance()
  if (why) return context.skip(`no cluster: ${why}`)
  const folder = mkdtempSync(join(tmpdir(), 'jawbench-cluster-'))
  const file = (name: string) => join(folder, name)
  const varies = [{ path: 'part.crackForce', law: 'lognormal', factor: 1.25 }]
  writeFileSync(file('study.json'), JSON.stringify({ ...PRESETS[0]!.scenario, spread: { varies } }))
  const asked = ['spread', file('study.json'), '--grips', '400', '--strategy', 'current-clamp', '--drivers', '60']
  const jawbench = (...args: string[]) => spawnSync(process.execPath, [TOOL, ...args], { encoding: 'utf8' }).stdout
  const whole = jawbench(...asked, '--format', 'json')

  const cluster = await startCluster(folder)
  if (!cluster) return context.skip('no cluster: its daemons do not come up here')
  try {
    const call = [process.execPath, TOOL, ...asked].map((word) => `'${word}'`).join(' ')
    const piece = '$SLURM_ARRAY_TASK_ID'
    writeFileSync(
      file('piece.sh'),
      `#!/bin/sh\nexec ${call} --piece ${piece}/${PIECES} --out '${folder}'/piece-${piece}.json\n`,
    )
    const array = [
      '--parsable',
      `--array=1-${PIECES}`,
      '--requeue',
      `--chdir=${process.cwd()}`,
      `--output=${file('out-%a')}`,
    ]
    const job = cluster.ask('sbatch', ...array, file('piece.sh'))
    const states = () => cluster.ask('squeue', '-h', '-r', '-o', '%K %t')
    await until(() => states().includes('2 R'))
    cluster.ask('scontrol', 'requeue', `${job}_2`) // kills it where it is and puts it back into the queue
    await until(() => states() === '2 PD')
    cluster.ask('scontrol', 'update', `JobId=${job}_2`, 'StartTime=now') // or it would rest for two minutes
    await until(() => states() === '')
  } finally {
    cluster.end()
  }
  const pieces = Array.from({ length: PIECES }, (_, at) => file(`piece-${at + 1}.json`))
  expect(jawbench('gather', ...pieces.reverse(), '--format', 'json')).toBe(whole)
  expect(JSON.parse(whole).results[0].grips).toBe(400)
})
