import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

// studies of minutes each, whose figures are told where they are made: too long for every change
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    maxWorkers: 2,
    // what tests leave in the temporary folder goes with the run
    globalSetup: ['tests/scratch.ts'],
    include: ['tests/studies/**/*.test.ts'],
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
  },
})
