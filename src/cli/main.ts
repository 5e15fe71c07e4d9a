#!/usr/bin/env node
import { version } from './program.ts';

const words = process.argv.slice(2);

// Scripts ask for the version at every step: it is said before anything is loaded.
if (words.length === 1 && words[0] === '--version') process.stdout.write(`${version}\n`);
else {
  const { runCommandLine } = await import('./runCommandLine.ts');
  await runCommandLine(words, version);
}
