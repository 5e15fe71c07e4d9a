/**
 * A text of at most so many characters, cut with an ellipsis.
 *
 * @param cutAt - `start` keeps the end, where a path has its name.
 */
export function shortText(text: string, most: number, cutAt: 'start' | 'end' = 'end'): string {
  const characters = [...text];
  if (characters.length <= most) return text;
  return cutAt === 'end'
    ? `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
    : `…${characters
        .slice(1 - most)
        .join('')
        .trimStart()}`;
}
