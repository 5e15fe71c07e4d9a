import { join } from 'node:path';
import { type CompareDocument, overlayName } from '../../entry/comparing.ts';
import { overlayEvidence } from '../../entry/evidence.ts';
import { MeasureError } from '../../entry/measuring.ts';
import { version } from '../program.ts';
import { openPress } from '../report/openPress.ts';
import { picturePng } from '../report/picturePng.ts';
import { makeFolder } from '../writing/makeFolder.ts';
import { ownOutput } from '../writing/ownOutput.ts';
import { writeOutput } from '../writing/writeOutput.ts';
import type { Side } from './readSide.ts';

export interface OverlayOptions {
  readonly out: string;
  readonly png: boolean;
  readonly force: boolean;
}

/**
 * Writes the sheet of two captures over each other and says where.
 *
 * @throws MeasureError `compare.noWave` where one of them is a result alone; as `writeOutput` does.
 */
export async function writeOverlay(
  [a, b]: readonly [Side, Side],
  result: CompareDocument,
  files: readonly [string, string],
  { out, png, force }: OverlayOptions,
): Promise<string> {
  if (a.evidence === null || b.evidence === null) {
    throw new MeasureError('compare.noWave', 'A result in JSON carries no wave to draw.', {
      expected: 'two sheets or captures',
      advice: 'Leave --out away, or name the capture or its sheet',
    });
  }
  const { sealedSheet } = await import('../../entry/drawing.ts');
  const isBudgeted = a.comparand.budgets !== null && b.comparand.budgets !== null;
  const basis = isBudgeted ? 'budgets' : 'results';
  const evidence = overlayEvidence([a.evidence, b.evidence], result, basis, version);
  const svg = sealedSheet(await openPress(), evidence);
  const sha256 = [result.a.sha256, result.b.sha256];
  const path = join(out, overlayName(files));
  await makeFolder(out);
  const write = (ending: string, content: string | Uint8Array): Promise<void> =>
    writeOutput(`${path}${ending}`, content, { isOwn: ownOutput(sha256), force });
  await write('.svg', svg);
  if (png) await write('.png', await picturePng(svg, sha256));
  return `${path}.svg`;
}
