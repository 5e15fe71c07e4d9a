import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** Subsets in the order of the Unicode blocks that they hold; Greek for Ω. */
const subsets = [
  {
    name: 'latin',
    range:
      'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  },
  { name: 'greek', range: 'U+0370-03FF' },
] as const;

/**
 * The sheets' typeface as a style sheet that needs no other file: what is read as "Source Sans 3" is the one
 * shipped, whatever fonts the reader has.
 *
 * @returns `@font-face` rules with the font inside them as data, weights 400 and 600.
 */
export async function typeface(): Promise<string> {
  const { resolve } = createRequire(import.meta.url);
  const faces = subsets.flatMap((subset) => [400, 600].map((weight) => ({ ...subset, weight })));
  const rules = faces.map(async ({ name, range, weight }) => {
    const file = `@fontsource/source-sans-3/files/source-sans-3-${name}-${weight}-normal.woff2`;
    const data = (await readFile(resolve(file))).toString('base64');
    return `@font-face{font-family:'Source Sans 3';font-weight:${weight};src:url(data:font/woff2;base64,${data}) format('woff2');unicode-range:${range}}`;
  });
  return (await Promise.all(rules)).join('\n');
}
