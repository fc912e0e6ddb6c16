// Which browsers the end-to-end tests and the benchmarks drive: a Chromium always, a Firefox where there is one.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { root, SetupError } from './setup.mjs'

const debian = { chromium: '/usr/bin/chromium', 'firefox-esr': '/usr/bin/firefox-esr' }

/**
 * Path of a Chromium that is already there: CHROMIUM_PATH, else Playwright's own, else Debian's; null if none is.
 * Throws if CHROMIUM_PATH names no file.
 */
export const findBrowser = () => find('CHROMIUM_PATH', chromium.executablePath(), debian.chromium)

/** Path of a Firefox that is already there: FIREFOX_PATH, else Debian's; null if none is. Throws if FIREFOX_PATH names no file. */
export const findFirefox = () => find('FIREFOX_PATH', debian['firefox-esr'])

/** Path of a Chromium, installed now if none was there. Throws one clear sentence if that fails too. */
export function ensureBrowser() {
  const found = findBrowser() ?? (fromDebian('chromium') || fromPlaywright() ? findBrowser() : null)
  if (found) return found
  throw new SetupError(
    'No Chromium was found and none could be installed: install one and set CHROMIUM_PATH to its path.',
  )
}

/** Path of a Firefox, installed now if none was there and Debian's can be; null if it cannot. */
export const ensureFirefox = () => findFirefox() ?? (fromDebian('firefox-esr') ? findFirefox() : null)

function find(/** @type {string} */ variable, /** @type {string[]} */ ...usual) {
  const asked = process.env[variable]
  if (asked && !existsSync(asked)) throw new SetupError(`${variable} is ${asked}, but there is no such file.`)
  return [asked, ...usual].find((path) => path && existsSync(path)) ?? null
}

function fromDebian(/** @type {keyof typeof debian} */ name) {
  if (process.getuid?.() !== 0 || !isDebian()) return false
  console.error(`Installing ${name} through apt …`)
  const apt = (/** @type {string[]} */ ...args) =>
    run('apt-get', ['-q', ...args], { DEBIAN_FRONTEND: 'noninteractive' })
  const install = () => apt('install', '-y', '--no-install-recommends', name)
  return (install() || (apt('update') && install())) && existsSync(debian[name])
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
