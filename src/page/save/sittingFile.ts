import { MeasureError } from '../../entry/measuring.ts';
import type { Entry } from '../desk/entry.ts';
import type { NamedFile } from '../desk/sitting.ts';
import { nothingTold, type Told } from '../told/told.ts';

/** A sitting as a file: every capture whole, compressed, and what was told of it. */
interface SittingDocument {
  readonly schema: 'sineassay/sitting@1';
  readonly captures: readonly {
    readonly file: string;
    readonly told: Told;
    /** The file's bytes, gzip, base64. */
    readonly gzip: string;
  }[];
}

/** The captures of a sitting and all that was told of them, as the text of one JSON file. */
export async function sittingText(entries: readonly Entry[]): Promise<string> {
  const captures = [];
  for (const { name, told, file } of entries) {
    captures.push({ file: name, told, gzip: base64(await through(file, new CompressionStream('gzip'))) });
  }
  return `${JSON.stringify({ schema: 'sineassay/sitting@1', captures } satisfies SittingDocument)}\n`;
}

/**
 * Reads what `sittingText` wrote.
 *
 * @throws MeasureError `sitting.unknown` where the text is nothing of the kind, `sitting.damaged` where a capture in it
 * can't be unpacked.
 */
export async function readSitting(text: string): Promise<NamedFile[]> {
  const files: NamedFile[] = [];
  for (const { file: name, told, gzip } of capturesOf(text)) {
    files.push({ name, told: toldOf(told), file: await unpacked(name, gzip) });
  }
  return files;
}

async function unpacked(name: string, gzip: string): Promise<Blob> {
  try {
    const packed = Uint8Array.from(atob(gzip), (character) => character.charCodeAt(0));
    return new Blob([await through(new Blob([packed]), new DecompressionStream('gzip'))]);
  } catch {
    // Base64 and gzip each have errors of their own; to a person they mean the same.
    throw new MeasureError('sitting.damaged', `The sitting is damaged: ${name} can’t be unpacked from it.`, {
      advice: 'Open the capture itself.',
    });
  }
}

function capturesOf(text: string): SittingDocument['captures'] {
  const unknown = new MeasureError('sitting.unknown', 'This is no sitting saved by this page.', {
    advice: 'Results in JSON can’t be opened here: choose the captures, or a sitting.json.',
  });
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw unknown;
  }
  const { schema, captures } = (data ?? {}) as Partial<SittingDocument>;
  if (schema !== 'sineassay/sitting@1' || !Array.isArray(captures)) throw unknown;
  for (const one of captures as unknown[]) {
    const { file, gzip } = (one ?? {}) as { readonly file?: unknown; readonly gzip?: unknown };
    if (typeof file !== 'string' || typeof gzip !== 'string') throw unknown;
  }
  return captures;
}

/** What was told, as far as it is of the right kind; a file may have been edited. */
function toldOf(told: unknown): Told {
  const given = (told ?? {}) as Readonly<Record<string, unknown>>;
  const pairs = Object.entries(nothingTold).map(([key, nothing]) => {
    const value = given[key];
    if (key === 'instrument') return [key, instrumentOf(value)];
    return [key, typeof value === typeof nothing ? value : nothing];
  });
  return Object.fromEntries(pairs) as Told;
}

function instrumentOf(value: unknown): Told['instrument'] {
  if (typeof value !== 'object' || value === null) return {};
  return Object.fromEntries(Object.entries(value).filter(([, text]) => typeof text === 'string'));
}

async function through(blob: Blob, stream: GenericTransformStream): Promise<ArrayBuffer> {
  const piped = blob
    .stream()
    .pipeThrough(stream as ReadableWritablePair<Uint8Array, Uint8Array<ArrayBuffer>>);
  return new Response(piped).arrayBuffer();
}

function base64(bytes: ArrayBuffer): string {
  const view = new Uint8Array(bytes);
  const parts: string[] = [];
  // A call takes only so many arguments.
  for (let from = 0; from < view.length; from += 0x8000) {
    parts.push(String.fromCharCode(...view.subarray(from, from + 0x8000)));
  }
  return btoa(parts.join(''));
}
