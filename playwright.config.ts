import { defineConfig, devices } from '@playwright/test'
import { findBrowser, findFirefox } from './.tools/browser.mjs'
import { freePort } from './.tools/port.mjs'

// The workers load this file again and inherit the port; two runs at once do not meet.
process.env.E2E_PORT ??= String(await freePort())
const port = process.env.E2E_PORT
const address = `http://127.0.0.1:${port}/`
/** Where `npm run e2e` put a copy of the build, and what failing tests leave behind. */
const folder = process.env.E2E_FOLDER
const chromium = findBrowser()
const firefox = findFirefox()

/**
 * What Chromium does without: the pages that it loads behind each window for its address bar cost as much as opening ours. The switch
 * takes the place of the driver's own, so what that is for stands here too.
 */
const WITHOUT = [
  ...['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup', 'WebUIOmniboxFullPopup'],
  ...['AvoidUnnecessaryBeforeUnloadCheckSync', 'DestroyProfileOnBrowserClose', 'PaintHolding', 'HttpsUpgrades'],
  ...['ThirdPartyStoragePartitioning', 'Translate', 'MediaRouter', 'GlobalMediaControls', 'OptimizationHints'],
]

export default defineConfig({
  testDir: 'e2e',
  outputDir: folder ? `${folder}/traces` : 'test-results/0',
  forbidOnly: true,
  workers: 2,
  fullyParallel: true,
  // No test depends on the clock: a busy machine may take its time, and a page that hangs is still found.
  timeout: 1_800_000,
  expect: { timeout: 120_000 },
  reporter: 'list',
  use: { baseURL: address },
  projects: [
    {
      name: 'chromium',
      use: {
        ...devices['Desktop Chrome'],
        launchOptions: {
          ...(chromium && { executablePath: chromium }),
          args: ['--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1', `--disable-features=${WITHOUT.join(',')}`],
        },
      },
    },
    // A Firefox as it comes from its makers, driven through WebDriver BiDi, which not every test gets along with.
    // Where there is none that can be driven its tests are listed as not run, see support.ts.
    {
      name: 'firefox',
      testMatch: 'same-bits.spec.ts',
      metadata: { lacking: process.env.E2E_FIREFOX_LACKING ?? (firefox ? null : 'There is no Firefox here.') },
      use: {
        browserName: 'firefox',
        channel: 'moz-firefox',
        launchOptions: firefox ? { executablePath: firefox } : {},
      },
    },
  ],
  webServer: {
    command: `node node_modules/vite/bin/vite.js preview --port ${port}${folder ? ` --outDir "${folder}/site"` : ''}`,
    url: address,
    reuseExistingServer: false,
    timeout: 120_000,
  },
})
