// npm run e2e -- ARGUMENTS: the end-to-end tests alone, on a fresh build.
import { ensureInstalled, main } from './setup.mjs'

await main(async () => {
  await ensureInstalled()
  const { runEndToEnd } = await import('./playwright.mjs')
  const { status, note } = await runEndToEnd(process.argv.slice(2))
  if (note) console.log(`\n${note}`)
  process.exitCode = status
})
