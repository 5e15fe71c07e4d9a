import { appendFileSync } from 'node:fs';
import { register } from 'node:module';

// Preloaded into the command: writes the address of every module that is imported into the file MODULE_LIST.
register(import.meta.url);

/** Node calls it for each import, in a thread of its own. */
export async function resolve(specifier, context, next) {
  const found = await next(specifier, context);
  appendFileSync(process.env.MODULE_LIST, `${found.url}\n`);
  return found;
}
