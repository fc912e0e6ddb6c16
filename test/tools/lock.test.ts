import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'

const lock = resolve('.tools/lock.mjs')
const script = (folder: string, body: string) => {
  const file = join(folder, 'script.mjs')
  writeFileSync(
    file,
    `import { appendFileSync } from 'node:fs'
    import { alone } from ${JSON.stringify(lock)}
    const say = (word) => appendFileSync(${JSON.stringify(join(folder, 'said'))}, word + process.pid + ' ')
    await alone(${JSON.stringify(folder)}, 'trial', async () => { ${body} })`,
  )
  return file
}
const newFolder = () => mkdtempSync(join(tmpdir(), 'jawbench-lock-'))

it('lets one process in at a time', async () => {
  const folder = newFolder()
  const file = script(folder, `say('in'); await new Promise((rested) => setTimeout(rested, 50)); say('out')`)
  const crowd = Array.from({ length: 4 }, () => spawn(process.execPath, [file], { stdio: 'inherit' }))
  const codes = await Promise.all(crowd.map(async (child) => (await once(child, 'exit'))[0]))
  expect(codes).toEqual([0, 0, 0, 0])
  const said = readFileSync(join(folder, 'said'), 'utf8').trim().split(' ')
  expect(said).toHaveLength(8)
  for (let n = 0; n < 8; n += 2) expect(said[n + 1]).toBe(said[n]!.replace('in', 'out'))
  expect(new Set(said).size).toBe(8)
})

it('takes over from a process that was killed', () => {
  const folder = newFolder()
  expect(spawnSync(process.execPath, [script(folder, `say('in'); process.kill(process.pid, 'SIGKILL')`)]).signal).toBe(
    'SIGKILL',
  )
  expect(spawnSync(process.execPath, [script(folder, `say('in')`)]).status).toBe(0)
})

it('is free again after a failure', () => {
  const folder = newFolder()
  expect(spawnSync(process.execPath, [script(folder, `throw new Error('no')`)]).status).toBe(1)
  expect(spawnSync(process.execPath, [script(folder, `say('in')`)]).status).toBe(0)
})
