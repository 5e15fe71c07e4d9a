import type { LinkedFile } from '../../entry/pages.ts';

/** What a file of the folder of results is, by its name; the first that fits. */
const kinds: readonly (readonly [end: RegExp, what: string])[] = [
  [/^index\.html$/, 'all sheets'],
  [/^bench\.html$/, 'page of the bench test'],
  [/^bench\.md$/, 'bench test as text to paste'],
  [/^bench\.json$/, 'bench test as data'],
  [/^figures\.csv$/, 'figures of the last run as a table'],
  [/^comparison\.svg$/, 'sheet of all units'],
  [/^sweep-.*\.svg$/, 'sheet of a sweep'],
  [/-card\.svg$/, 'card'],
  [/-card\.png$/, 'card as picture'],
  [/-changes\.svg$/, 'sheet of changes'],
  [/-changes\.png$/, 'picture of changes'],
  [/\.svg$/, 'sheet'],
  [/\.png$/, 'picture'],
  [/\.html$/, 'page'],
  [/\.md$/, 'text to paste'],
];

/** A file of the folder of results as a page links to it. */
export function linkedFile(name: string): LinkedFile {
  return { name, what: kinds.find(([end]) => end.test(name))?.[1] ?? name };
}
