import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Assay } from '../entry/measuring.ts';
import { sheetNames } from './sheetNames.ts';
import { unwritable } from './unwritable.ts';
import { writeWhole } from './writeWhole.ts';

export interface SheetWriterOptions {
  /** Folder that the sheets go into; made when the first is written. */
  readonly out: string;
  /** True: a picture beside each. */
  readonly png: boolean;
  /** True: each channel has a sheet of its own, named after it. */
  readonly byChannel: boolean;
}

/**
 * What writes the sheets of one run, no two of them under one name.
 *
 * @param files - the captures of the run.
 * @returns writes the sheet of a result and says where; it throws MeasureError `file.unwritable`.
 */
export function sheetWriter(
  files: readonly string[],
  { out, png, byChannel }: SheetWriterOptions,
): (assay: Assay) => Promise<string> {
  const names = sheetNames(files);
  const taken = new Set<string>();
  let document: Document | null = null;
  return async (assay) => {
    const { file, voltage, current } = assay.result;
    const channel = (voltage ?? current)?.channel ?? '';
    const suffix = byChannel ? `-${channel.replaceAll(/[^\p{L}\p{N}_-]+/gu, '_')}` : '';
    const path = join(out, untaken(`${names.get(file)}${suffix}`, taken));
    const { sheetSvg, stepSvg } = await import('../entry/drawing.ts');
    document ??= await emptyDocument();
    await makeFolder(out);
    await writeSheet(path, sheetSvg(document, assay), png);
    // What changes along the record has a sheet of its own beside it.
    const { dynamics } = assay;
    if (dynamics !== null)
      await writeSheet(`${path}-changes`, stepSvg(document, { ...assay, dynamics }), png);
    return `${path}.svg`;
  };
}

async function writeSheet(path: string, svg: string, png: boolean): Promise<void> {
  await writeWhole(`${path}.svg`, svg);
  if (!png) return;
  const { renderPng } = await import('./renderPng.ts');
  await writeWhole(`${path}.png`, renderPng(svg));
}

/** The name, with a number where it is taken already. */
function untaken(name: string, taken: Set<string>): string {
  let free = name;
  for (let number = 2; taken.has(free.toLowerCase()); number++) free = `${name}-${number}`;
  taken.add(free.toLowerCase());
  return free;
}

async function makeFolder(path: string): Promise<void> {
  await mkdir(path, { recursive: true }).catch((error: unknown) => {
    throw unwritable(path, error);
  });
}

/** jsdom takes half a second to load: only when a sheet is drawn. */
async function emptyDocument(): Promise<Document> {
  const { JSDOM } = await import('jsdom');
  return new JSDOM().window.document;
}
