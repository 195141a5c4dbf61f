import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // on two cores it would take one
    maxWorkers: 2,
    // what tests leave in the temporary folder goes with the run
    globalSetup: ['tests/scratch.ts'],
    include: ['tests/slow/**/*.test.ts'],
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
})
