import { figuresIn } from '../../src/measure/figures.ts';
import { breakLines } from '../../src/words/courseWords.ts';

const begin = '<!-- figures: src/measure/figures.ts, put here by `npm run demonstration` -->\n';
const end = '<!-- end of figures -->\n';

/**
 * The README with its list of figures as the catalogue has them: name, key of a voltage, definition.
 *
 * @throws Error where the two marks between which the list stands are not there.
 */
export function readmeWithFigures(readme: string): string {
  const [from, to] = [readme.indexOf(begin), readme.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`README.md: a list between ${begin}and ${end}expected`);
  const items = figuresIn('V', 'listed').flatMap(({ name, key, unit, definition }) => {
    const inUnit = unit === '' ? '' : `, ${unit}`;
    return breakLines(`**${name}** (\`${key}\`${inUnit}): ${definition}`, {
      ...{ width: 118, lead: '- ', indent: '  ' },
    });
  });
  return `${readme.slice(0, from)}${begin}\n${items.join('\n')}\n\n${readme.slice(to)}`;
}
