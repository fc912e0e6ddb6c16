import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    environment: 'node',
    pool: 'threads',
    testTimeout: 20_000,
    coverage: { include: ['sim/**'], exclude: ['sim/cli.ts'] },
  },
})
