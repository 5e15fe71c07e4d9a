import { defineConfig } from 'vitest/config';

/** All mutants, for `npm run fuzz`: it takes some minutes. */
export default defineConfig({
  test: {
    include: ['test/fuzz/**/*.test.ts'],
    setupFiles: ['test/seed.ts'],
    testTimeout: 7_200_000,
    env: { SINEASSAY_FUZZ: process.env.SINEASSAY_FUZZ ?? '20000' },
  },
});
