import { defineConfig } from 'vitest/config';

/** Pages and sheets as a real browser shows them; apart from the other tests, which need nothing but Node. */
export default defineConfig({
  test: {
    // Every core: by itself it would leave one free, which of two is half.
    maxWorkers: '100%',
    include: ['test/browser/**/*.test.ts'],
    globalSetup: 'test/cli/buildCommand.ts',
    setupFiles: ['test/seed.ts'],
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});
