// Before npm pack: writes what the package hands out into lib, the command line and the simulator's public face with its types.
import { spawnSync } from 'node:child_process'
import { chmodSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { alone } from './lock.mjs'
import { cache, ensureInstalled, main, root, SetupError } from './setup.mjs'

/** What goes in, and what each becomes. */
const ENTRIES = { index: 'sim/cli/scripts.ts', jawbench: 'sim/cli/index.ts' }

await main(async () => {
  await ensureInstalled()
  await alone(root, 'pack', pack)
})

async function pack() {
  const draft = join(cache, `lib-${process.pid}`)
  await bundle(draft)
  types(draft)
  rmSync(join(root, 'lib'), { recursive: true, force: true })
  renameSync(draft, join(root, 'lib'))
}

/** Packages stay outside: they are installed with this one. */
async function bundle(/** @type {string} */ draft) {
  const { build } = await import('rolldown')
  const { core } = await import('./core-plugin.mjs')
  await build({
    input: Object.fromEntries(Object.entries(ENTRIES).map(([name, file]) => [name, join(root, file)])),
    platform: 'node',
    external: /^(?!virtual:)[^./\0]/,
    logLevel: 'silent',
    plugins: [core()],
    output: { dir: draft, format: 'esm', entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' },
  })
  const program = join(draft, 'jawbench.mjs')
  writeFileSync(program, `#!/usr/bin/env node\n${readFileSync(program, 'utf8')}`)
  chmodSync(program, 0o755)
}

function types(/** @type {string} */ draft) {
  const tsc = join(createRequire(import.meta.url).resolve('typescript/package.json'), '../bin/tsc')
  const how = ['-p', join(root, 'tsconfig.lib.json'), '--outDir', join(draft, 'types')]
  const { status } = spawnSync(process.execPath, [tsc, ...how], { cwd: root, stdio: ['ignore', 2, 2] })
  if (status !== 0) throw new SetupError('The types of the package could not be written, see above.')
  for (const name of readdirSync(join(draft, 'types'), { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.d.ts')) rewrite(join(draft, 'types', name))
}

/** Whoever uses the package needs to know neither the endings of the sources nor the core's own names for numbers. */
function rewrite(/** @type {string} */ file) {
  const text = readFileSync(file, 'utf8')
    .replace(/((?:from|import\()\s*['"]\.[^'"]*)\.ts(['"])/g, '$1.js$2')
    .replace(/\b(?:f64|i32)\b/g, 'number')
    .replace(/\bbool\b/g, 'boolean')
  writeFileSync(file, text)
}
