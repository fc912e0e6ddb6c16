// A fingerprint of source files, so that a build is made again exactly when something it reads has changed.
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './setup.mjs'

/** Hex digest over names and contents of the files and folders given (relative to the project; absent ones count as empty). */
export function fingerprint(/** @type {string[]} */ ...paths) {
  const hash = createHash('sha256')
  for (const path of paths.flatMap(filesIn)) {
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(root, path)))
      .update('\0')
  }
  return hash.digest('hex').slice(0, 20)
}

/** @returns {string[]} */
function filesIn(/** @type {string} */ path) {
  const full = join(root, path)
  if (!existsSync(full)) return []
  if (!statSync(full).isDirectory()) return [path]
  return readdirSync(full)
    .sort()
    .flatMap((name) => filesIn(`${path}/${name}`))
}
