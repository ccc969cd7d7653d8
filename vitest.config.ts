import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    environment: 'node',
    setupFiles: ['tests/helpers/oneSeed.ts'],
    maxWorkers: 2,
    testTimeout: 20_000,
    reporters: ['default'],
  },
})
