import { defineConfig } from 'vitest/config';

export default defineConfig({
  // All captures are made in one test, which takes longer than a test commonly may.
  test: { include: ['test/demonstration/writeCaptures.ts'], testTimeout: 60_000 },
});
