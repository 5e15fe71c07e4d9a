import { admitPartly, type MeasureError, wordedError } from '../../entry/measuring.ts';
import type { Entry, NamedFile } from '../desk/sitting.ts';
import { type SittingDocument, sittingSchema } from './sittingSchema.ts';

/** The captures of a sitting and all that was told of them, as the text of one JSON file. */
export async function sittingText(entries: readonly Entry[]): Promise<string> {
  const captures = [];
  for (const { name, told, file } of entries) {
    captures.push({ file: name, told, gzip: base64(await through(file, new CompressionStream('gzip'))) });
  }
  return `${JSON.stringify({ schema: 'sineassay/sitting@1', captures } satisfies SittingDocument)}\n`;
}

/**
 * Reads what `sittingText` wrote. A file that is longer packed than all may be unpacked is not even read. Packed, a
 * capture may be a thousandth of itself: what it says to unpack to is added up before anything is unpacked, and held to
 * while it is.
 *
 * @param mostBytes - that all captures may unpack to. Default: what the browser may hold.
 * @throws MeasureError `sitting.unknown` where the text is nothing of the kind, `sitting.damaged` where a capture in it
 * can't be unpacked, `sitting.tooLarge` where they are more than the browser may hold.
 */
export async function readSitting(sitting: Blob, mostBytes: number = roomBytes()): Promise<NamedFile[]> {
  const mostPacked = Math.min(TEXT_SHARE * mostBytes + MEBIBYTE, LONGEST_TEXT);
  if (sitting.size > mostPacked) throw tooLarge(sitting.size, mostPacked, 'is larger');
  const packed = capturesOf(await sitting.text()).map(({ file: name, told, gzip }) => {
    const bytes = packedBytes(name, gzip);
    return { name, told, bytes, unpacksTo: unpackedSize(name, bytes) };
  });
  const total = packed.reduce((sum, { unpacksTo }) => sum + unpacksTo, 0);
  if (total > mostBytes) throw tooLarge(total, mostBytes, 'unpacks to more');
  const files: NamedFile[] = [];
  for (const { name, told, bytes, unpacksTo } of packed) {
    files.push({ name, told, file: await unpacked(name, bytes, unpacksTo) });
  }
  return files;
}

const MEBIBYTE = 2 ** 20;
/** Of the memory: a capture is there packed, unpacked, as text and as numbers. */
const SHARE = 1 / 8;
/** Base64 of what can't be packed; names and what was told stand beside it. */
const TEXT_SHARE = 4 / 3;
/** Half of the longest text that every browser can have. */
const LONGEST_TEXT = 2 ** 28;
/** Where the browser doesn't say what the machine has; most have more. */
const USUAL_MEMORY_BYTES = 4096 * MEBIBYTE;

/** What captures may unpack to here. Browsers that say how much memory there is say it in GiB, 8 at most. */
function roomBytes(): number {
  const { navigator } = globalThis as { readonly navigator?: { readonly deviceMemory?: number } };
  const deviceMemory = navigator?.deviceMemory;
  return SHARE * (deviceMemory === undefined ? USUAL_MEMORY_BYTES : deviceMemory * 1024 * MEBIBYTE);
}

function packedBytes(name: string, gzip: string): Uint8Array<ArrayBuffer> {
  try {
    return Uint8Array.from(atob(gzip), (character) => character.charCodeAt(0));
  } catch {
    throw damaged(name);
  }
}

/** Of a gzip file, as its last four bytes say (RFC 1952, 2.3.1: ISIZE). */
function unpackedSize(name: string, packed: Uint8Array): number {
  // Header and trailer alone are 18 bytes.
  if (packed.length < 18) throw damaged(name);
  return new DataView(packed.buffer).getUint32(packed.length - 4, true);
}

/** @param size - that it says to have; at the first byte more it is given up. */
async function unpacked(name: string, packed: Uint8Array<ArrayBuffer>, size: number): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  try {
    const reader = piped(new Blob([packed]), new DecompressionStream('gzip')).getReader();
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      parts.push(read.value);
      length += read.value.length;
      if (length > size) {
        await reader.cancel();
        break;
      }
    }
  } catch {
    // Base64 and gzip each have errors of their own; to a person they mean the same.
    throw damaged(name);
  }
  if (length !== size) throw damaged(name);
  return new Blob(parts);
}

function damaged(name: string): MeasureError {
  return wordedError('sitting.damaged', `The sitting is damaged: ${name} can’t be unpacked from it.`, {
    advice: 'Open the capture itself.',
  });
}

/** @param does - to which of its sizes it is. */
function tooLarge(bytes: number, mostBytes: number, does: string): MeasureError {
  const megabytes = (count: number): string => `${Math.ceil(count / MEBIBYTE)} MiB`;
  return wordedError('sitting.tooLarge', `The sitting ${does} than this browser may hold.`, {
    expected: `at most ${megabytes(mostBytes)}`,
    received: megabytes(bytes),
    advice: 'Open the captures themselves, a few at a time, or measure them with the command.',
  });
}

function capturesOf(text: string): SittingDocument['captures'] {
  const unknown = wordedError('sitting.unknown', 'This is no sitting saved by this page.', {
    advice: 'Results in JSON can’t be opened here: choose the captures, or a sitting.json.',
  });
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw unknown;
  }
  return admitPartly(data, sittingSchema, () => unknown).captures;
}

async function through(blob: Blob, stream: GenericTransformStream): Promise<ArrayBuffer> {
  return new Response(piped(blob, stream)).arrayBuffer();
}

function piped(blob: Blob, stream: GenericTransformStream): ReadableStream<Uint8Array<ArrayBuffer>> {
  return blob
    .stream()
    .pipeThrough(stream as ReadableWritablePair<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>);
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
