/**
 * What the sheet of two captures over each other is called, without the ending.
 *
 * @param files - names of the captures, folders before them or not.
 * @example overlayName(['captures/a-300w.csv', 'b 300w.csv']) // 'compare-a-300w-b_300w'
 */
export function overlayName(files: readonly [a: string, b: string]): string {
  return `compare-${files.map(stemOf).join('-')}`;
}

/** A file's name without folder and ending, of characters that every file system takes. */
function stemOf(file: string): string {
  return file
    .replace(/^.*[\\/]/, '')
    .replace(/(?<=.)\.[^.]*$/, '')
    .replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_')
    .slice(0, 80);
}
