const spokenUnits: Readonly<Record<string, string>> = {
  W: 'watts',
  kW: 'kilowatts',
  VA: 'volt-amperes',
  A: 'amperes',
  '%': 'percent',
};

/**
 * The load as the start of a sentence's predicate, lower case: "at 300 W resistive", "with a kettle",
 * "at an unknown load".
 *
 * @param load - as told; undefined where nobody told it.
 * @param spoken - spell the unit of a leading number: "at 300 watts resistive".
 */
export function loadPhrase(load: string | undefined, spoken = false): string {
  if (load === undefined || load === '') return 'at an unknown load';
  const match = /^(\d+(?:[.,]\d+)?)\s*(kW|VA|W|A|%)(?![\p{L}\p{N}])(.*)$/u.exec(load);
  if (match !== null) {
    const [, number = '', unit = '', rest = ''] = match;
    return `at ${number}${spoken ? ` ${spokenUnits[unit]}` : `\u00a0${unit}`}${rest}`;
  }
  return /^\d|load$/i.test(load) ? `at ${load}` : `with ${load}`;
}
