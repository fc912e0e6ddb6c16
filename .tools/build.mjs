import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { alone } from './lock.mjs'
import { cache, ensureInstalled, main, root, SetupError } from './setup.mjs'
import { fingerprint } from './sources.mjs'

/** Builds the app into dist unless dist already holds these very sources. Throws if the build fails. */
export async function ensureBuilt() {
  const key = fingerprint(
    'app',
    'sim',
    'public',
    'vite.config.ts',
    '.tools/core.mjs',
    '.tools/core-plugin.mjs',
    '.tools/notices.ts',
    '.tools/offline.ts',
    '.tools/opening.ts',
    '.tools/tex.ts',
    'package-lock.json',
  )
  const stamp = join(cache, 'dist-stamp')
  const built = () =>
    existsSync(join(root, 'dist/index.html')) && existsSync(stamp) && readFileSync(stamp, 'utf8') === key
  if (!built()) await alone(root, 'build', () => built() || build(stamp, key))
}

/** Copies the build, whole, also while another process builds anew. */
export const copyBuilt = (/** @type {string} */ target) =>
  alone(root, 'build', () => cpSync(join(root, 'dist'), target, { recursive: true }))

function build(/** @type {string} */ stamp, /** @type {string} */ key) {
  console.error('Building …')
  // Built beside and then exchanged: a page being served meanwhile, or a failed build, never meets an empty folder.
  const draft = join(cache, `dist-${process.pid}`)
  const vite = join(root, 'node_modules/vite/bin/vite.js')
  const result = spawnSync(process.execPath, [vite, 'build', '--outDir', draft, '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
  })
  if (result.status !== 0) throw new SetupError('The app could not be built, see above.')
  rmSync(join(root, 'dist'), { recursive: true, force: true })
  renameSync(draft, join(root, 'dist'))
  writeFileSync(stamp, key)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await main(async () => {
    await ensureInstalled()
    await ensureBuilt()
  })
}
