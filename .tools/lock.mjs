// One at a time among the processes that share this folder: two first runs at once must not install or build into each other.
import { createHash } from 'node:crypto'
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isRunning } from './processes.mjs'

/**
 * Runs `body` alone: others that ask for the same name wait until it is done. A lock whose owner is gone is taken over.
 * Not to be asked for twice by one process.
 * @template T
 * @param {string} folder what is shared
 * @param {string} name
 * @param {() => T} body its promise, if it returns one, is waited for
 * @returns {Promise<Awaited<T>>}
 */
export async function alone(folder, name, body) {
  // Beside the system's other temporary files: the package manager empties its own folder while it installs.
  const file = join(tmpdir(), `jawbench-${createHash('sha256').update(folder).digest('hex').slice(0, 16)}-${name}`)
  for (let waits = 0; !take(file); waits++) {
    if (waits === 10) console.error(`Waiting for process ${owner(file)}, which is busy here (${name}) …`)
    await new Promise((rested) => setTimeout(rested, 100))
  }
  try {
    return await body()
  } finally {
    rmSync(file, { force: true })
  }
}

/** Whether the lock is ours now. The file appears with its owner's id in it, in one step. */
function take(/** @type {string} */ file) {
  const own = `${file}.${process.pid}`
  writeFileSync(own, String(process.pid))
  try {
    linkSync(own, file)
    return true
  } catch {
    const before = owner(file)
    if (before !== null && !isRunning(before)) bury(file, before)
    return false
  } finally {
    rmSync(own, { force: true })
  }
}

function owner(/** @type {string} */ file) {
  try {
    return Number(readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

/** Removes the lock of a process that is gone; had another buried it and taken the lock meanwhile, that one gets it back. */
function bury(/** @type {string} */ file, /** @type {number} */ gone) {
  const grave = `${file}.grave.${process.pid}`
  try {
    renameSync(file, grave)
    if (owner(grave) !== gone) linkSync(grave, file)
  } catch {
    // Another was quicker.
  } finally {
    rmSync(grave, { force: true })
  }
}
