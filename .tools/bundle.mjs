// Node 20 cannot run TypeScript: an entry is bundled once per state of its sources, then run in this process.
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { alone } from './lock.mjs'
import { cache, root, SetupError } from './setup.mjs'
import { fingerprint } from './sources.mjs'

/**
 * Bundles a TypeScript entry if its sources changed, and runs it with this process's arguments.
 * @param {string} name short name of the bundle
 * @param {string} entry file to run, relative to the project
 * @param {string[]} sources folders that the entry reads
 * @param {boolean} packages whether npm packages go into the bundle (quick to start) or stay outside
 */
export async function runTypeScript(name, entry, sources, packages) {
  if (!existsSync(join(root, entry))) throw new SetupError(`${entry} is not there.`)
  const key = fingerprint(...sources, 'package-lock.json', '.tools/bundle.mjs')
  const file = join(cache, `${name}-${key}.mjs`)
  if (!existsSync(file))
    await alone(root, name, async () => existsSync(file) || bundle(name, join(root, entry), file, packages))
  process.argv[1] = file
  await import(pathToFileURL(file).href)
}

/** Writes beside the target first and renames: who does not wait for the lock never reads half a file. */
async function bundle(
  /** @type {string} */ name,
  /** @type {string} */ input,
  /** @type {string} */ file,
  /** @type {boolean} */ packages,
) {
  const { build } = await import('rolldown')
  const { core } = await import('./core-plugin.mjs')
  mkdirSync(cache, { recursive: true })
  const draft = `${file}.${process.pid}`
  await build({
    input,
    platform: 'node',
    external: packages ? undefined : /^(?!virtual:)[^./\0]/,
    logLevel: 'silent',
    plugins: [core()],
    output: { file: draft, format: 'esm', codeSplitting: false },
  })
  renameSync(draft, file)
  for (const old of readdirSync(cache)) {
    if (old.startsWith(`${name}-`) && join(cache, old) !== file) rmSync(join(cache, old), { force: true })
  }
}
