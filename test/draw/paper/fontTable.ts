import { createRequire } from 'node:module';
import { readAdvances } from './readAdvances.ts';

const resolve = createRequire(import.meta.url).resolve;

/** Blocks of Unicode that a sheet can meet often; every other character counts as wide. */
const blocks: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x2000, 0x2044],
  [0x2070, 0x209c],
  [0x20ac, 0x20ac],
  [0x2122, 0x2126],
  [0x2190, 0x2193],
  [0x2202, 0x2265],
  [0xfffd, 0xfffd],
];

/** The advance widths of one weight as `src/draw/paper/advanceWidths.ts` keeps them. */
export function fontTable(folder: string): { from: number; widths: number[] }[] {
  const font = readAdvances(resolve(`@expo-google-fonts/source-sans-3/${folder}/SourceSans3_${folder}.ttf`));
  if (font.unitsPerEm !== 1000) throw new Error(`expected 1000 units per em, found ${font.unitsPerEm}`);
  return blocks.map(([from, to]) => ({
    from,
    widths: Array.from({ length: to - from + 1 }, (_, i) => font.advance(from + i)),
  }));
}
