/**
 * A text cell made fit to show: control characters become the replacement mark, runs of blanks one blank.
 *
 * @param most - longest length returned, in characters; a longer text ends in an ellipsis.
 */
export function cleanText(text: string, most = 80): string {
  const shown = text
    .replace(/\s+/g, ' ')
    .trim()
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, '\ufffd');
  return shown.length > most ? `${shown.slice(0, most - 1)}…` : shown;
}
