import { createRequire } from 'node:module';

/** Version of the program, as its package says. */
export const version: string = (
  createRequire(import.meta.url)('../../package.json') as { readonly version: string }
).version;
