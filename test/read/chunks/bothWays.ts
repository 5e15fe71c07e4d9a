import { expect } from 'vitest';
import { errorData, MeasureError } from '../../../src/base/measureError.ts';
import type { Capture, Channel } from '../../../src/read/capture.ts';
import { readInChunks } from '../../../src/read/chunks/readInChunks.ts';
import type { ReadingLengths } from '../../../src/read/chunks/readingPlan.ts';
import { chunkReader, scanClaimedChunks } from '../../../src/read/chunks/scanClaimedChunks.ts';
import { type ReadCaptureOptions, readCapture } from '../../../src/read/readCapture.ts';
import type { ByteSource } from '../../../src/read/text/textAccess.ts';

/** Bytes in memory as if they stood in a file. */
function sourceOf(bytes: Uint8Array): ByteSource {
  return {
    byteLength: bytes.length,
    read: (from, into) => {
      const part = bytes.subarray(from, from + into.length);
      into.set(part);
      return part.length;
    },
  };
}

type Outcome = { readonly capture: Capture } | { readonly error: MeasureError };

/** Reads in chunks, two readers in turn. @returns null where that can't be done. */
async function inChunks(
  bytes: Uint8Array,
  options: ReadCaptureOptions,
  lengths: ReadingLengths,
): Promise<Capture | null> {
  const source = sourceOf(bytes);
  return readInChunks(source, {
    ...options,
    lengths,
    readChunks: async (plan, board) => {
      const turn = (): Promise<void> => new Promise((done) => setImmediate(done));
      const readers = [0, 1].map(() => scanClaimedChunks(chunkReader(source, plan), board, turn));
      return (await Promise.all(readers)).flat();
    },
  });
}

/**
 * Reads a file whole and in chunks, and expects the same, bit for bit: samples, notices, layout, errors.
 *
 * @returns whether it could be read in chunks.
 */
export async function readsBothWays(
  bytes: Uint8Array,
  options: ReadCaptureOptions,
  lengths: ReadingLengths,
): Promise<boolean> {
  const whole = await outcomeOf(() => readCapture(bytes, options));
  let isRead = true;
  const pieces = await outcomeOf(async () => {
    const capture = await inChunks(bytes, options, lengths);
    isRead = capture !== null;
    return capture ?? readCapture(bytes, options);
  });
  expect(described(pieces)).toEqual(described(whole));
  if ('capture' in whole && 'capture' in pieces) {
    whole.capture.channels.forEach(({ samples }, k) => {
      const read = pieces.capture.channels[k]!.samples;
      expect(read.length).toBe(samples.length);
      expect(samples.findIndex((sample, i) => !Object.is(sample, read[i]))).toBe(-1);
    });
  }
  return isRead;
}

async function outcomeOf(read: () => Capture | Promise<Capture>): Promise<Outcome> {
  try {
    return { capture: await read() };
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return { error };
  }
}

/** All but the samples, which are compared one by one. */
function described(outcome: Outcome): unknown {
  if ('error' in outcome) {
    return errorData(outcome.error);
  }
  const { channels, ...others } = outcome.capture;
  return { ...others, channels: channels.map(({ samples, ...channel }: Channel) => channel) };
}
