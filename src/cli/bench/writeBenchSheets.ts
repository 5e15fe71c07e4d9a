import { type BenchDocument, sweepName } from '../../entry/benching.ts';
import {
  type CardTheme,
  type CarriedUnit,
  type ComparisonEvidence,
  capturesOfUnits,
  type SweepEvidence,
} from '../../entry/evidence.ts';
import { version } from '../program.ts';
import type { Formats } from '../report/formatOptions.ts';
import { openPress } from '../report/openPress.ts';
import { picturePng } from '../report/sealedPng.ts';

export interface BenchSheetOptions {
  /** What was told of today's units. */
  readonly told: readonly CarriedUnit[];
  /** What else the folder gets. */
  readonly formats: Formats;
  /** True: a picture beside each sheet. */
  readonly png: boolean;
  /** A card beside each; null: none. */
  readonly card: CardTheme | null;
  /** Writes a file of the folder of results and gives its path. */
  readonly write: (name: string, content: string | Uint8Array) => Promise<string>;
}

/**
 * Writes the sheet of each of today's sweeps and, where units stand side by side, the one that compares them.
 *
 * @returns the sweep's sheet by the name of its unit.
 * @throws MeasureError as `write` does.
 */
export async function writeBenchSheets(
  bench: BenchDocument,
  { told, formats, png, card, write }: BenchSheetOptions,
): Promise<ReadonlyMap<string, string>> {
  // d3 takes half a second to load: only when a sheet is drawn.
  const { sealedSheet } = await import('../../entry/drawing.ts');
  const press = await openPress();
  const drawn = new Map<string, string>();
  const draw = async (stem: string, evidence: SweepEvidence | ComparisonEvidence): Promise<string> => {
    const svg = sealedSheet(press, evidence);
    const path = await write(`${stem}.svg`, svg);
    drawn.set(`${stem}.svg`, svg);
    const sha256 = capturesOfUnits(evidence.told).map((capture) => capture.sha256);
    if (png) await write(`${stem}.png`, await picturePng(svg, sha256));
    if (card !== null) {
      const shown = sealedSheet(press, { ...evidence, card });
      await write(`${stem}-card.svg`, shown);
      await write(`${stem}-card.png`, await picturePng(shown, sha256));
    }
    return path;
  };
  const common = { schema: 'sineassay/sheet@1', program: version } as const;
  const paths = new Map<string, string>();
  const taken = new Set<string>();
  for (const unit of bench.units) {
    if (unit.earlier !== undefined || unit.points.length === 0) continue;
    const safe = sweepName(unit.name);
    const name = taken.has(safe.toLowerCase()) ? `${safe}-${taken.size + 1}` : safe;
    taken.add(name.toLowerCase());
    const own = told.filter((one) => one.name === unit.name) as [CarriedUnit];
    const evidence = { ...common, picture: 'sweep' as const, told: own, result: unit };
    paths.set(unit.name, await draw(name, evidence));
  }
  if (bench.units.length > 1) {
    await draw('comparison', { ...common, picture: 'comparison', told, result: bench });
  }
  if (formats.html || formats.markdown) {
    const { writeBenchPages } = await import('./writeBenchPages.ts');
    await writeBenchPages(bench, { drawn, formats, png, card: card !== null, write });
  }
  return paths;
}
