/**
 * A table that depends on a size alone, made once for each of the sizes asked for last.
 *
 * @param make - gives the same for the same size.
 * @param most - tables kept, ≥ 1. Default 8: as many as a long record asks for.
 */
export function keptBySize<Table>(make: (size: number) => Table, most = 8): (size: number) => Table {
  const kept = new Map<number, Table>();
  return (size) => {
    const table = kept.get(size) ?? make(size);
    // Put behind the others, so that the first is the one that nobody asked for the longest.
    kept.delete(size);
    kept.set(size, table);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return table;
  };
}
