import { defineConfig, devices } from '@playwright/test'
import { findBrowser } from './.tools/browser.mjs'
import { freePort } from './.tools/port.mjs'

// The workers load this file again and inherit the port; two runs at once do not meet.
process.env.E2E_PORT ??= String(await freePort())
const port = process.env.E2E_PORT
const browser = findBrowser()

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  forbidOnly: true,
  workers: 1,
  reporter: 'list',
  use: {
    ...devices['Desktop Chrome'],
    baseURL: `http://127.0.0.1:${port}/`,
    launchOptions: browser ? { executablePath: browser } : {},
    trace: 'retain-on-failure',
  },
  webServer: {
    command: `node node_modules/vite/bin/vite.js preview --port ${port}`,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
})
