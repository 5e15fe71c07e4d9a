/**
 * Names for channels, each different: an empty one becomes `column 3` after its place in the file, a
 * repeated one gets its number behind it.
 *
 * @param columns - names as the file has them, and 0-based file columns.
 */
export function uniqueNames(
  columns: readonly { readonly name: string; readonly column: number }[],
): string[] {
  const taken = new Set<string>();
  return columns.map(({ name, column }) => {
    const wanted = name === '' ? `column ${column + 1}` : name;
    let free = wanted;
    for (let number = 2; taken.has(free); number++) free = `${wanted} (${number})`;
    taken.add(free);
    return free;
  });
}
