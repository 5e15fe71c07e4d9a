import { join } from 'node:path';
import type { BenchDocument } from '../../entry/benching.ts';
import { writeWhole } from '../writeWhole.ts';

/**
 * Writes the sheet of each of today's sweeps and, where units stand side by side, the one that compares them.
 *
 * @param out - a folder that is there.
 * @returns the sweep's sheet by the name of its unit.
 * @throws MeasureError `file.unwritable`.
 */
export async function writeBenchSheets(
  bench: BenchDocument,
  out: string,
): Promise<ReadonlyMap<string, string>> {
  // jsdom and d3 take more than half a second to load: only when a sheet is drawn.
  const { JSDOM } = await import('jsdom');
  const { comparisonSvg, sweepSvg } = await import('../../entry/drawing.ts');
  const { document } = new JSDOM().window;
  const paths = new Map<string, string>();
  for (const unit of bench.units) {
    if (unit.earlier !== undefined || unit.points.length === 0) continue;
    const safe = unit.name.replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_').slice(0, 100);
    const taken = [...paths.values()].map((path) => path.toLowerCase());
    const plain = join(out, `sweep-${safe}.svg`);
    const path = taken.includes(plain.toLowerCase())
      ? join(out, `sweep-${safe}-${paths.size + 1}.svg`)
      : plain;
    await writeWhole(path, sweepSvg(document, unit));
    paths.set(unit.name, path);
  }
  if (bench.units.length > 1) await writeWhole(join(out, 'comparison.svg'), comparisonSvg(document, bench));
  return paths;
}
