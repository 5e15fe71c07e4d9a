import { defineConfig } from 'vitest/config';

const testTimeout = 60_000;

export default defineConfig({
  test: {
    projects: [
      {
        test: { name: 'core', include: ['test/**/*.test.ts'], exclude: ['test/cli/**'], testTimeout },
      },
      {
        test: {
          name: 'command',
          include: ['test/cli/**/*.test.ts'],
          globalSetup: 'test/cli/buildCommand.ts',
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
    ],
  },
});
