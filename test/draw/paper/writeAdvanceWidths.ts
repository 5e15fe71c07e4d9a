import { writeFileSync } from 'node:fs';
import { fontTable } from './fontTable.ts';

// Writes src/draw/paper/advanceWidths.ts from the shipped font. Needs a Node that runs TypeScript (22.18 or newer):
//   npx node@24 test/draw/paper/writeAdvanceWidths.ts && npx biome check --write src/draw/paper

const text = `import type { TextWeight } from './textWeight.ts';

/**
 * Advance widths of Source Sans 3 in thousandths of the size, by block of Unicode; 0 where it has no glyph.
 *
 * Written by test/draw/paper/writeAdvanceWidths.ts from the font files of the package
 * @expo-google-fonts/source-sans-3 (SIL Open Font License); a test holds the two together.
 */
export const advanceWidths: Readonly<
  Record<TextWeight, readonly { readonly from: number; readonly widths: readonly number[] }[]>
> = {
  400: ${JSON.stringify(fontTable('400Regular'))},
  600: ${JSON.stringify(fontTable('600SemiBold'))},
};
`;
writeFileSync(new URL('../../../src/draw/paper/advanceWidths.ts', import.meta.url), text);
