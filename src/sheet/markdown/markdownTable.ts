import { markdownText } from './markdownText.ts';

/**
 * A table of Markdown.
 *
 * @param rows - texts, cleaned and escaped here.
 */
export function markdownTable(
  heads: readonly { readonly heading: string; readonly isNumber?: boolean }[],
  rows: readonly (readonly string[])[],
): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(heads.map(({ heading }) => markdownText(heading))),
    line(heads.map(({ isNumber = false }) => (isNumber ? '---:' : '---'))),
    ...rows.map((cells) => line(cells.map(markdownText))),
  ].join('\n');
}
