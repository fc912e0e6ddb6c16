// npm run hostile -- ARGUMENTS: hostile scenarios against the laws of test/hostile.
import { endWithReader, ensureInstalled, main } from './setup.mjs'

endWithReader()
await main(async () => {
  await ensureInstalled()
  const { runTypeScript } = await import('./bundle.mjs')
  await runTypeScript('hostile', 'test/hostile/hostile.ts', ['sim', 'test'], false)
})
