/** One face of the sheets' typeface: some of its letters in one weight. */
export interface Face {
  readonly weight: 400 | 600;
  /** Code points that it holds, first and last of each run. */
  readonly covers: readonly (readonly [from: number, to: number])[];
  /** A style rule (`@font-face`) with the font inside it as data. */
  readonly rule: string;
}

const textElement = /<text\b([^>]*)>([^<]*)</g;

/**
 * The faces that a picture's texts need, as the style element of an SVG file: so that a reader sees them in the
 * typeface that they were set in, whatever fonts the machine has.
 *
 * @param svg - the picture, as `svgText` writes it.
 * @returns empty where no face is needed.
 */
export function typefaceStyle(svg: string, faces: readonly Face[]): string {
  const used = new Map<number, Set<number>>();
  for (const [, attributes = '', text = ''] of svg.matchAll(textElement)) {
    const weight = attributes.includes('font-weight="600"') ? 600 : 400;
    const points = used.get(weight) ?? new Set();
    for (const character of text) points.add(character.codePointAt(0) ?? 0);
    used.set(weight, points);
  }
  const rules = faces
    .filter(({ weight, covers }) =>
      [...(used.get(weight) ?? [])].some((point) =>
        covers.some(([from, to]) => from <= point && point <= to),
      ),
    )
    .map(({ rule }) => `${rule}\n`);
  return rules.length === 0 ? '' : `<style>\n${rules.join('')}</style>\n`;
}
