import { defineConfig } from 'vitest/config';

/** Every family with as many draws as it takes to see one wrong in some hundreds: `npm run families`. */
export default defineConfig({
  test: {
    include: ['test/families/families.test.ts'],
    setupFiles: ['test/seed.ts'],
    testTimeout: 3_600_000,
    env: { FAMILY_DRAWS: process.env.FAMILY_DRAWS ?? '400' },
  },
});
