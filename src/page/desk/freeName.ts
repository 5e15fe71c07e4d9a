/**
 * A file's name, with a number before its ending where it is taken already.
 *
 * @example freeName('CH1.csv', new Set(['CH1.csv'])) // 'CH1 (2).csv'
 */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  const dot = name.lastIndexOf('.');
  // A dot in a folder's name, or the one before a hidden file's, begins no ending.
  const isEnding = dot > 0 && !/[\\/]/.test(name.slice(dot)) && !/[\\/]/.test(name.charAt(dot - 1));
  const [stem, ending] = isEnding ? [name.slice(0, dot), name.slice(dot)] : [name, ''];
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${stem} (${number})${ending}`;
  return free;
}
