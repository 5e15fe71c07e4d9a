import { readFile } from 'node:fs/promises';
import { Argument, type Command } from 'commander';

/** Documents by the name in their key `schema`, and what people write; the build makes a file of each. */
const names = [
  ...['measure', 'energy', 'bench', 'compare', 'recheck', 'truth', 'sheet', 'sitting'],
  ...['plan', 'instrument'],
];

const after = `
  measure, energy, bench, compare, recheck
                       what those commands print with --json
  truth                what synth writes beside its capture
  sheet                the data inside a sheet (.svg)
  sitting              what the page saves to go on with later
  plan, instrument     what you write, for bench and --instrument

Example:
  sineassay schema measure > measure.schema.json

Each document but a plan and an instrument file names its schema:
"schema": "sineassay/measure@1". Later versions add keys and rename none.
An editor that knows of a plan's schema says what may stand in it.`;

/** Makes a command `schema`: the JSON Schema of a document. */
export function defineSchema(command: Command): void {
  command
    .addArgument(new Argument('<name>', 'of the document').choices(names))
    .addHelpText('after', after)
    .action(async (name: string) => {
      process.stdout.write(await readFile(new URL(`../schemas/${name}.json`, import.meta.url), 'utf8'));
    });
}
