import { ensureInstalled, main } from './setup.mjs'

await main(ensureInstalled)
