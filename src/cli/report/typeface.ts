import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Face } from '../../entry/evidence.ts';

/** The package's files, each with the code points that its own style sheets give it (`unicode-range`). */
const subsets = [
  {
    name: 'latin',
    range:
      'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  },
  {
    name: 'latin-ext',
    range: 'U+0100-0130,U+0132-0151,U+0154-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1E00-1E9F',
  },
  { name: 'greek', range: 'U+0370-03FF' },
  { name: 'cyrillic', range: 'U+0301,U+0400-045F,U+0490-0491,U+04B0-04B1,U+2116' },
  { name: 'vietnamese', range: 'U+1EA0-1EF9,U+20AB' },
] as const;

/**
 * The sheets' typeface as style rules that need no other file: what is read as "Source Sans 3" is the one shipped,
 * whatever fonts the reader has. Weights 400 and 600.
 */
export async function typeface(): Promise<readonly Face[]> {
  const { resolve } = createRequire(import.meta.url);
  const faces = subsets.flatMap((subset) => ([400, 600] as const).map((weight) => ({ ...subset, weight })));
  return Promise.all(
    faces.map(async ({ name, range, weight }) => {
      const file = `@fontsource/source-sans-3/files/source-sans-3-${name}-${weight}-normal.woff2`;
      const data = (await readFile(resolve(file))).toString('base64');
      const source = `url(data:font/woff2;base64,${data}) format('woff2')`;
      const rule = `@font-face{font-family:'Source Sans 3';font-weight:${weight};src:${source};unicode-range:${range}}`;
      return { weight, covers: coversOf(range), rule };
    }),
  );
}

function coversOf(range: string): Face['covers'] {
  return range.split(',').map((run) => {
    const [from = '', to = from] = run.replace('U+', '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)];
  });
}
