/**
 * Where a tag of XML ends: behind the first `>` that stands in no quoted attribute.
 *
 * @param from - of its `<`.
 * @returns −1 where it has no end. The time grows with the tag's length alone.
 */
export function tagEnd(text: string, from: number): number {
  let quote = '';
  for (let i = from; i < text.length; i++) {
    const sign = text[i]!;
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (sign === '"' || sign === "'") {
      quote = sign;
    } else if (sign === '>') {
      return i + 1;
    }
  }
  return -1;
}
