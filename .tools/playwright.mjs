// One run of the end-to-end tests. Each has its own folder with a copy of the build that it serves and what its tests
// leave behind, so that neither a second run nor a new build meanwhile gets in its way.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBrowser, ensureFirefox } from './browser.mjs'
import { copyBuilt, ensureBuilt } from './build.mjs'
import { makeScratch, scratch } from './scratch.mjs'
import { root } from './setup.mjs'

/** Playwright's JSON report of this run, where `json` is among its reporters. */
export const reportFile = join(scratch, 'report.json')

/**
 * Runs Playwright on a fresh build.
 * @param {string[]} args
 * @param {import('node:child_process').StdioOptions} stdio
 * @param {(output: import('node:stream').Readable) => void} listen takes the program's output where `stdio` pipes it
 * @returns {Promise<{ status: number, note: string | null }>} exit code, and what could not be run and why
 */
export async function runEndToEnd(args, stdio = 'inherit', listen = () => {}) {
  await ensureBuilt()
  const chromium = await ensureBrowser()
  const firefox = await ensureFirefox()
  makeScratch()
  const site = join(scratch, 'site')
  await copyBuilt(site)
  const cli = join(root, 'node_modules/@playwright/test/cli.js')
  const playwright = spawn(process.execPath, [cli, 'test', ...args], {
    cwd: root,
    stdio,
    env: {
      ...process.env,
      CHROMIUM_PATH: chromium,
      ...(firefox.path && { FIREFOX_PATH: firefox.path }),
      ...(firefox.lacking && { E2E_FIREFOX_LACKING: firefox.lacking }),
      E2E_FOLDER: scratch,
      PLAYWRIGHT_JSON_OUTPUT_FILE: reportFile,
    },
  })
  for (const output of [playwright.stdout, playwright.stderr]) if (output) listen(output)
  const [status] = await once(playwright, 'close')
  rmSync(site, { recursive: true, force: true })
  return { status: status ?? 1, note: firefox.lacking && `Not run: the tests in Firefox. ${firefox.lacking}` }
}
