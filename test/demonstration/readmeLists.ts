import { kindNames, waveformKinds } from '../../src/judge/waveform/kinds.ts';
import { figuresIn } from '../../src/measure/figures.ts';
import { breakLines } from '../../src/words/courseWords.ts';

/**
 * The README with its lists as the catalogues have them: of figures with name, key of a voltage and definition; of kinds
 * of wave.
 *
 * @throws Error where the two marks between which a list stands are not there.
 */
export function readmeWithLists(readme: string): string {
  const figures = figuresIn('V', 'listed').map(({ name, key, unit, definition }) => {
    const inUnit = unit === '' ? '' : `, ${unit}`;
    return `**${name}** (\`${key}\`${inUnit}): ${definition}`;
  });
  const kinds = kindNames.map((kind) => `**${kind}**: ${waveformKinds[kind].definition}`);
  return [
    { what: 'figures', file: 'src/measure/figures.ts', items: figures },
    { what: 'kinds', file: 'src/judge/waveform/kinds.ts', items: kinds },
  ].reduce(withList, readme);
}

interface List {
  readonly what: string;
  /** The catalogue's. */
  readonly file: string;
  readonly items: readonly string[];
}

function withList(readme: string, { what, file, items }: List): string {
  const begin = `<!-- ${what}: ${file}, put here by \`npm run demonstration\` -->\n`;
  const [from, to] = [readme.indexOf(begin), readme.indexOf(`<!-- end of ${what} -->\n`)];
  if (from < 0 || to < from) throw new Error(`README.md: a list behind ${begin}and its end expected`);
  const lines = items.flatMap((item) => breakLines(item, { width: 118, lead: '- ', indent: '  ' }));
  return `${readme.slice(0, from)}${begin}\n${lines.join('\n')}\n\n${readme.slice(to)}`;
}
