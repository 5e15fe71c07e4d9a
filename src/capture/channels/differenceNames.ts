/**
 * The two channels that `CH1-CH2` means, where both exist. A name may hold a hyphen itself.
 *
 * @returns null where the text is no difference of two of the names.
 */
export function differenceNames(text: string, names: readonly string[]): readonly [string, string] | null {
  const has = (name: string): boolean => names.some((known) => known.toLowerCase() === name.toLowerCase());
  for (let at = text.indexOf('-'); at >= 0; at = text.indexOf('-', at + 1)) {
    const [plus, minus] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
    if (has(plus) && has(minus)) return [plus, minus];
  }
  return null;
}
