import { createRequire } from 'node:module';

/** Version of the program, as its package says; by name, because this file may stand anywhere in it. */
export const version: string = (
  createRequire(import.meta.url)('sineassay/package.json') as { readonly version: string }
).version;
