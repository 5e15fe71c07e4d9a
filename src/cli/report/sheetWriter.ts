import { basename, extname, join } from 'node:path';
import { type CardTheme, captureEvidence, cardEvidence, type Press } from '../../entry/evidence.ts';
import type { Assay } from '../../entry/measuring.ts';
import type { MeasureFileOptions } from '../measureFile.ts';
import { version } from '../program.ts';
import { ownOutput } from '../writing/ownOutput.ts';
import { makeFolder, writeOutput } from '../writing/writeOutput.ts';
import type { Formats } from './formatOptions.ts';
import { openPress } from './openPress.ts';
import { picturePng } from './sealedPng.ts';

interface SheetWriterOptions {
  /** Folder that the sheets go into; made when the first is written. */
  readonly out: string;
  /** True: a picture beside each. */
  readonly png: boolean;
  /** A card beside each; null: none. */
  readonly card: CardTheme | null;
  /** What else lies beside each. */
  readonly formats: Formats;
  /** True: each channel has a sheet of its own, named after it. */
  readonly byChannel: boolean;
  /** True: what is there already is replaced, whosesoever it is. */
  readonly force: boolean;
}

/** Writes the sheets of a result and says where the first is. */
export type WriteSheet = (assay: Assay, options: MeasureFileOptions) => Promise<string>;

/**
 * What writes the sheets of one run, no two of them under one name.
 *
 * @param files - the captures of the run.
 * @returns a writer that throws MeasureError `file.unwritable` or `file.exists`.
 */
export function sheetWriter(
  files: readonly string[],
  { out, png, card, formats, byChannel, force }: SheetWriterOptions,
): WriteSheet {
  const names = sheetNames(files);
  // Two pages have names of their own.
  const taken = new Set(['index', 'bench']);
  let opened: Press | null = null;
  return async (assay, options) => {
    const { file, sha256, voltage, current } = assay.result;
    const channel = (voltage ?? current)?.channel ?? '';
    const suffix = byChannel ? `-${channel.replaceAll(/[^\p{L}\p{N}_-]+/gu, '_')}` : '';
    const name = untaken(`${names(file, sha256)}${suffix}`, taken);
    const path = join(out, name);
    opened ??= await openPress();
    const press = opened;
    const { sealedSheet } = await import('../../entry/drawing.ts');
    await makeFolder(out);
    const write = (ending: string, content: string | Uint8Array): Promise<void> =>
      writeOutput(`${path}${ending}`, content, { isOwn: ownOutput([sha256]), force });
    const svgs: string[] = [];
    const sheet = async (picture: 'wave' | 'changes', ending: string): Promise<void> => {
      const svg = sealedSheet(press, captureEvidence(assay, picture, options, version));
      await write(`${ending}.svg`, svg);
      svgs.push(svg);
      if (png) await write(`${ending}.png`, await picturePng(svg, [sha256]));
    };
    await sheet('wave', '');
    // What changes along the record has a sheet of its own beside it.
    if (assay.dynamics !== null) await sheet('changes', '-changes');
    if (card !== null) {
      const svg = sealedSheet(press, cardEvidence(assay, card, options, version));
      await write('-card.svg', svg);
      await write('-card.png', await picturePng(svg, [sha256]));
    }
    if (formats.html || formats.markdown) {
      const { writePages } = await import('./writePages.ts');
      await writePages({ name, svgs, png, card: card !== null, formats, write });
    }
    return `${path}.svg`;
  };
}

/** The name, with a number where it is taken already. */
function untaken(name: string, taken: Set<string>): string {
  let free = name;
  for (let number = 2; taken.has(free.toLowerCase()); number++) free = `${name}-${number}`;
  taken.add(free.toLowerCase());
  return free;
}

/**
 * What names the sheet of each capture: its own name; with the first eight digits of its digest where captures of the
 * run share one, as scopes that save every time into a new folder make them do. A folder's name is never part of it:
 * sheets are published.
 *
 * @param files - paths, each once.
 * @returns a name without an ending; letters, digits and -_. only, whatever the capture was called.
 */
function sheetNames(files: readonly string[]): (file: string, sha256: string) => string {
  const counts = new Map<string, number>();
  for (const file of files) {
    const key = nameOf(file).toLowerCase();
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return (file, sha256) => {
    const name = nameOf(file);
    // Some file systems don't tell upper case from lower.
    return (counts.get(name.toLowerCase()) ?? 0) > 1 ? `${name}-${sha256.slice(0, 8)}` : name;
  };
}

function nameOf(file: string): string {
  const name = basename(file, extname(file))
    .replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_')
    .replace(/^\.+/, '');
  return name === '' ? 'capture' : name.slice(0, 100);
}
