import { defineConfig } from 'vitest/config'
import { core } from './.tools/core-plugin.mjs'

export default defineConfig({
  plugins: [core()],
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    setupFiles: ['sim/others.ts'],
    environment: 'node',
    pool: 'threads',
    isolate: false, // the tests leave nothing behind, and reading the modules anew for each file takes as long as the tests
    testTimeout: 1_800_000, // of no test: it ends a run that hangs, on the slowest machine
    coverage: { include: ['sim/**'], exclude: ['sim/cli/**'] },
  },
})
