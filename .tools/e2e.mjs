// npm run e2e -- ARGUMENTS: the end-to-end tests alone, on a fresh build.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { ensureInstalled, main, root } from './setup.mjs'

await main(async () => {
  ensureInstalled()
  const { ensureBuilt } = await import('./build.mjs')
  const { ensureBrowser } = await import('./browser.mjs')
  ensureBuilt()
  process.env.CHROMIUM_PATH = ensureBrowser()
  const cli = join(root, 'node_modules/@playwright/test/cli.js')
  process.exitCode =
    spawnSync(process.execPath, [cli, 'test', ...process.argv.slice(2)], { cwd: root, stdio: 'inherit' }).status ?? 1
})
