import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { cache, root, SetupError } from './setup.mjs'
import { fingerprint } from './sources.mjs'

/** Builds the app into dist unless dist already holds these very sources. Throws if the build fails. */
export function ensureBuilt() {
  const key = fingerprint('app', 'sim', 'public', 'vite.config.ts', '.tools/offline.ts', 'package-lock.json')
  const stamp = join(cache, 'dist-stamp')
  const built = existsSync(join(root, 'dist/index.html')) && existsSync(stamp) && readFileSync(stamp, 'utf8') === key
  if (built) return
  console.error('Building …')
  const result = spawnSync(process.execPath, [join(root, 'node_modules/vite/bin/vite.js'), 'build'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
  })
  if (result.status !== 0) throw new SetupError('The app could not be built, see above.')
  mkdirSync(cache, { recursive: true })
  writeFileSync(stamp, key)
}
