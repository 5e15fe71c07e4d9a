// Builds all that `rolldown.config.ts` names. The bundler's own command lists every file of it, before each answer of `npm start`.
import { build } from 'rolldown';
import { loadConfig } from 'rolldown/config';

await build(await loadConfig('rolldown.config.ts'));
