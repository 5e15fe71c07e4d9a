const words: readonly (readonly [RegExp, string])[] = [
  [/(?<=\d)[ \u00a0]%/g, ' percent'],
  [/(?<=\d)[ \u00a0]kW\b/g, ' kilowatts'],
  [/(?<=\d)[ \u00a0]W\b/g, ' watts'],
  [/(?<=\d)[ \u00a0]V\b/g, ' volts'],
  [/(?<=\d)[ \u00a0]Hz\b/g, ' hertz'],
  [/(?<=\d)[ \u00a0]ms\b/g, ' milliseconds'],
  [/(?<=\d)[ \u00a0]s\b/g, ' seconds'],
  [/(?<=\d)[ \u00a0]?Ω/g, ' ohms'],
  [/(?<=\d)[ \u00a0]?°/g, ' degrees'],
];

/** A sentence as it is read aloud: units after a number spelled out. */
export function spelledUnits(sentence: string): string {
  return words.reduce((said, [unit, word]) => said.replace(unit, word), sentence);
}
