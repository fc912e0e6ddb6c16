// Which browsers the end-to-end tests and the benchmarks drive: a Chromium always, a Firefox where there is one.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium, firefox } from 'playwright-core'
import { alone } from './lock.mjs'
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
export async function ensureBrowser() {
  const found = () => findBrowser()
  const path = found() ?? (await alone(root, 'browsers', () => found() ?? (installChromium() ? found() : null)))
  if (path) return path
  throw new SetupError(
    'No Chromium was found and none could be installed: install one and set CHROMIUM_PATH to its path.',
  )
}

/**
 * A Firefox that the tests can drive: its path, or why there is none. Debian's is installed, or brought up to date, where that
 * can be and helps.
 * @returns {Promise<{ path: string, lacking: null } | { path: string | null, lacking: string }>}
 */
export const ensureFirefox = () =>
  alone(root, 'browsers', async () => {
    const path = findFirefox()
    const why = path && (await whyNotDriven(path))
    if (path && !why) return { path, lacking: null }
    const newer = (!path || path === debian['firefox-esr']) && fromDebian('firefox-esr') ? findFirefox() : null
    const whyNot = newer ? await whyNotDriven(newer) : why
    if (newer && !whyNot) return { path: newer, lacking: null }
    return { path: newer ?? path, lacking: whyNot ?? NO_FIREFOX }
  })

const NO_FIREFOX =
  'There is no Firefox here, and none could be installed through apt; install firefox-esr, or set FIREFOX_PATH to its path.'

/** Opens a page in a Firefox, as the tests do. Null if that goes well, else what stands in the way. */
export async function whyNotDriven(/** @type {string} */ executablePath) {
  try {
    const browser = await firefox.launch({ channel: 'moz-firefox', executablePath, timeout: MUTE })
    try {
      const title = await Promise.race([titleIn(browser), rest(MUTE)])
      if (title !== 'drives') throw new Error('A page does not open.')
    } finally {
      await browser.close()
    }
    return null
  } catch (error) {
    const [words = ''] = String(error instanceof Error ? error.message : error).split('\n')
    return `${executablePath} cannot be driven by Playwright: ${words}`
  }
}

/** Time after which a browser that has not answered is taken to be mute [ms]; a slow one needs seconds. */
const MUTE = 600_000

async function titleIn(/** @type {import('playwright-core').Browser} */ browser) {
  const page = await browser.newPage()
  await page.goto('data:text/html,<title>drives</title>', { timeout: 0 })
  return page.evaluate('document.title')
}

const rest = (/** @type {number} */ time) => new Promise((rested) => setTimeout(rested, time).unref())

const installChromium = () => fromDebian('chromium') || fromPlaywright()

function find(/** @type {string} */ variable, /** @type {string[]} */ ...usual) {
  const asked = process.env[variable]
  if (asked && !existsSync(asked)) throw new SetupError(`${variable} is ${asked}, but there is no such file.`)
  return [asked, ...usual].find((path) => path && existsSync(path)) ?? null
}

function fromDebian(/** @type {keyof typeof debian} */ name) {
  if (process.getuid?.() !== 0 || !isDebian()) return false
  console.error(`Installing ${name} through apt …`)
  // Lists that are weeks old name a browser that is weeks old, or is no longer there. Without a network the old ones must do.
  if (!listsAreNew) listsAreNew = apt('update')
  return apt('install', '-y', '--no-install-recommends', name) && existsSync(debian[name])
}

let listsAreNew = false

const apt = (/** @type {string[]} */ ...args) =>
  run('apt-get', ['-q', '-o', 'DPkg::Lock::Timeout=600', ...args], { DEBIAN_FRONTEND: 'noninteractive' })

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
