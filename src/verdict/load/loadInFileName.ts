/** What the name of a capture's file says of the load. */
export interface NamedLoad {
  /** Null where the name gives more than one power. */
  readonly watts: number | null;
  /** Where in the name it stands. */
  readonly at: number;
}

const WATTS = /(?<![a-z0-9.,])(\d+(?:[.,]\d+)?)[-_ ]?(k?)w(?:atts?)?(?![a-z0-9])/gi;
/** Not the `.5kW` of a name without one. */
const EXTENSION = /\.[a-z][a-z0-9]*$/i;
const NO_LOAD = /(?<![a-z])(?:no[-_ ]?load|unloaded|idle)(?![a-z])/i;

/**
 * The load that the name of a file tells: `300w`, `red-1.5kW`, `no-load`, `idle`, `0w`; null where it tells none.
 *
 * @param name - of the file alone, no folder; with or without its extension.
 * @example loadInFileName('red-1.5kW.csv') // { watts: 1500, at: 4 }
 */
export function loadInFileName(name: string): NamedLoad | null {
  const bare = name.replace(EXTENSION, '');
  const powers = [...bare.matchAll(WATTS)];
  const noLoad = NO_LOAD.exec(bare);
  const marks = [...powers, ...(noLoad === null ? [] : [noLoad])].map(({ index }) => index);
  if (marks.length === 0) return null;
  const told = new Set([...powers.map(wattsOf), ...(noLoad === null ? [] : [0])]);
  const [watts] = told;
  return { watts: told.size === 1 ? watts! : null, at: Math.min(...marks) };
}

/** To a thousandth of a watt: 1.1 kW is 1100 W. */
function wattsOf([, digits = '', kilo]: RegExpMatchArray): number {
  return Math.round(Number(digits.replace(',', '.')) * (kilo === '' ? 1e3 : 1e6)) / 1e3;
}
