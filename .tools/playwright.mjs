// One run of the end-to-end tests. Each has its own folder with a copy of the build that it serves and what its tests
// leave behind, so that neither a second run nor a new build meanwhile gets in its way.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, ensureFirefox } from './browser.mjs'
import { ensureBuilt } from './build.mjs'
import { root } from './setup.mjs'

const results = join(root, 'test-results')
const folder = join(results, String(process.pid))

/** Playwright's JSON report of this run, where `json` is among its reporters. */
export const reportFile = join(folder, 'report.json')

/**
 * Runs Playwright on a fresh build.
 * @param {string[]} args
 * @returns {{ status: number, note: string | null }} exit code, and what was left out and why
 */
export function runEndToEnd(args) {
  ensureBuilt()
  const chromium = ensureBrowser()
  const firefox = ensureFirefox()
  removeEndedRuns()
  mkdirSync(folder, { recursive: true })
  const site = join(folder, 'site')
  cpSync(join(root, 'dist'), site, { recursive: true })
  const cli = join(root, 'node_modules/@playwright/test/cli.js')
  const { status } = spawnSync(process.execPath, [cli, 'test', ...args], {
    cwd: root,
    stdio: 'inherit',
    env: {
      ...process.env,
      CHROMIUM_PATH: chromium,
      ...(firefox && { FIREFOX_PATH: firefox }),
      E2E_FOLDER: folder,
      PLAYWRIGHT_JSON_OUTPUT_FILE: reportFile,
    },
  })
  rmSync(site, { recursive: true, force: true })
  const note = firefox
    ? null
    : 'Left out: the comparison of runs in Firefox. There is none here, and none could be installed through apt; ' +
      'install firefox-esr, or set FIREFOX_PATH to its path, to have it too.'
  return { status: status ?? 1, note }
}

function removeEndedRuns() {
  mkdirSync(results, { recursive: true })
  for (const name of readdirSync(results))
    if (!isRunning(Number(name))) rmSync(join(results, name), { recursive: true })
}

function isRunning(/** @type {number} */ pid) {
  try {
    return pid > 0 && process.kill(pid, 0)
  } catch {
    return false
  }
}
