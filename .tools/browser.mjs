// Which Chromium the end-to-end tests and the benchmarks drive.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { root, SetupError } from './setup.mjs'

const debian = '/usr/bin/chromium'

/**
 * Path of a Chromium that is already there: CHROMIUM_PATH, else Playwright's own, else Debian's; null if none is.
 * Throws if CHROMIUM_PATH names no file.
 */
export function findBrowser() {
  const asked = process.env.CHROMIUM_PATH
  if (asked && !existsSync(asked)) throw new SetupError(`CHROMIUM_PATH is ${asked}, but there is no such file.`)
  return [asked, chromium.executablePath(), debian].find((path) => path && existsSync(path)) ?? null
}

/** Path of a Chromium, installed now if none was there. Throws one clear sentence if that fails too. */
export function ensureBrowser() {
  const found = findBrowser() ?? (fromDebian() || fromPlaywright() ? findBrowser() : null)
  if (found) return found
  throw new SetupError(
    'No Chromium was found and none could be installed: install one and set CHROMIUM_PATH to its path.',
  )
}

function fromDebian() {
  if (process.getuid?.() !== 0 || !isDebian()) return false
  console.error('Installing Chromium through apt …')
  const apt = (/** @type {string[]} */ ...args) =>
    run('apt-get', ['-q', ...args], { DEBIAN_FRONTEND: 'noninteractive' })
  return (
    (apt('install', '-y', '--no-install-recommends', 'chromium') ||
      (apt('update') && apt('install', '-y', '--no-install-recommends', 'chromium'))) &&
    existsSync(debian)
  )
}

// Other distributions with apt may deliver only a stub under that name.
function isDebian() {
  return existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'))
}

function fromPlaywright() {
  console.error('Installing Chromium through Playwright …')
  const cli = join(root, 'node_modules/playwright-core/cli.js')
  const install = (/** @type {string[]} */ ...more) => run(process.execPath, [cli, 'install', '--no-shell', ...more])
  const mayAddLibraries = process.platform === 'linux' && process.getuid?.() === 0
  return (mayAddLibraries && install('--with-deps', 'chromium')) || install('chromium')
}

function run(/** @type {string} */ command, /** @type {string[]} */ args, env = {}) {
  return spawnSync(command, args, { stdio: ['ignore', 2, 2], env: { ...process.env, ...env } }).status === 0
}
