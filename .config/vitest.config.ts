import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // on two cores it would take one
    maxWorkers: 2,
    // what tests leave in the temporary folder goes with the run
    globalSetup: ['tests/scratch.ts'],
    include: ['tests/**/*.test.ts'],
    // coverage of intervals and kills take minutes: `npm run test:slow`
    exclude: ['tests/slow/**', 'tests/studies/**'],
    testTimeout: 120_000,
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      // runs in a browser alone, where tests/browser looks at it
      exclude: ['src/try/view/**', 'src/try/main.ts', 'src/try/study/client.ts', 'src/try/study/serve.ts'],
      reportOnFailure: true,
      reportsDirectory: 'coverage',
      // what is reached, in whole per cent: it does not fall
      thresholds: { statements: 94, branches: 89, functions: 95, lines: 95 },
    },
  },
})
