// The command line: npm run -s jawbench -- ARGUMENTS
import { ensureInstalled, main } from './setup.mjs'

await main(async () => {
  await ensureInstalled()
  const { runTypeScript } = await import('./bundle.mjs')
  await runTypeScript('cli', 'sim/cli/index.ts', ['sim'], true)
})
