import { defineConfig } from 'vitest/config';

/** A guard against a test that hangs, on a machine that others load too. */
const testTimeout = 240_000;

/**
 * `npm test` takes a minute: every room, few draws. `npm run test:all` (mode `all`) draws all, and takes files named
 * `….thorough.test.ts` too: statistics of thousands of records, and most runs of the built command.
 */
export default defineConfig(({ mode }) => {
  const everything = mode === 'all';
  // For what is built before the tests, too, and in every worker.
  if (everything) process.env.SINEASSAY_TESTS = 'all';
  const thorough = everything ? [] : ['test/**/*.thorough.test.ts'];
  const shared = {
    setupFiles: ['test/seed.ts'],
    testTimeout,
  };
  return {
    test: {
      // Every core: by itself it would leave one free, which of two is half.
      maxWorkers: '100%',
      projects: [
        {
          test: {
            ...shared,
            name: 'core',
            include: ['test/**/*.test.ts'],
            exclude: ['test/cli/**', 'test/browser/**', ...thorough],
            // The rooms are pure: files can't disturb each other, and each module is loaded once a worker.
            isolate: false,
            pool: 'threads',
          },
          // What the build puts into the page.
          define: { SHIPPED_VERSION: '"0.0.0"', SHIPPED_FACES: '[]' },
        },
        {
          test: {
            ...shared,
            name: 'command',
            include: ['test/cli/**/*.test.ts'],
            exclude: thorough,
            // Little is imported, and the tests wait for processes: what a file keeps is its own folder.
            isolate: false,
            globalSetup: 'test/cli/buildCommand.ts',
            hookTimeout: testTimeout,
          },
        },
      ],
    },
  };
});
