import { defineConfig } from 'vitest/config';

const testTimeout = 60_000;
const setupFiles = ['test/seed.ts'];

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          include: ['test/**/*.test.ts'],
          exclude: ['test/cli/**', 'test/browser/**'],
          setupFiles,
          testTimeout,
        },
      },
      {
        test: {
          name: 'command',
          include: ['test/cli/**/*.test.ts'],
          globalSetup: 'test/cli/buildCommand.ts',
          setupFiles,
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
    ],
  },
});
