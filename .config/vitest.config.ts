import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    coverage: { provider: 'v8', include: ['src/**'], reportsDirectory: 'coverage' },
  },
})
