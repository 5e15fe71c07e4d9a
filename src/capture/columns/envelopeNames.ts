/**
 * The columns that are the minimum and maximum of one channel: two names that differ only in those words.
 *
 * @returns the set of such names.
 */
export function envelopeNames(names: readonly string[]): ReadonlySet<string> {
  const sidesByStem = new Map<string, Set<string>>();
  const stemOf = (name: string): { stem: string; side: string } | null => {
    const match = /(^|[\s_.(-])(min|max|minimum|maximum|lower|upper|low|high)(?=$|[\s_.)-])/i.exec(name);
    if (match === null) return null;
    const side = /^(min|lo)/i.test(match[2]!) ? 'low' : 'high';
    return { stem: name.replace(match[2]!, '').toLowerCase(), side: /lower/i.test(match[2]!) ? 'low' : side };
  };
  for (const name of names) {
    const found = stemOf(name);
    if (found === null) continue;
    const sides = sidesByStem.get(found.stem) ?? new Set<string>();
    sidesByStem.set(found.stem, sides.add(found.side));
  }
  return new Set(names.filter((name) => sidesByStem.get(stemOf(name)?.stem ?? '\0')?.size === 2));
}
