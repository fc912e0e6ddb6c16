// The benchmarks: npm run bench -- ARGUMENTS. The app is built and CHROMIUM_PATH set before they run.
import { ensureInstalled, main } from './setup.mjs'

await main(async () => {
  await ensureInstalled()
  const { ensureBuilt } = await import('./build.mjs')
  const { ensureBrowser } = await import('./browser.mjs')
  const { runTypeScript } = await import('./bundle.mjs')
  await ensureBuilt()
  process.env.CHROMIUM_PATH = await ensureBrowser()
  await runTypeScript('bench', 'test/bench/bench.ts', ['sim', 'test/bench', 'app', 'e2e'], false)
})
