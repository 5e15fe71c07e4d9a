import { readSync } from 'node:fs';
import { type ByteSource, MeasureError } from '../../entry/reading.ts';

/**
 * An open file as a source of bytes. Reading stops the thread; it is of use where there is nothing else to do.
 *
 * @param byteLength - of the file as it was opened.
 */
export function fileSource(descriptor: number, byteLength: number): ByteSource {
  return {
    byteLength,
    read: (from, into) => {
      const wanted = Math.min(into.length, byteLength - from);
      let filled = 0;
      while (filled < wanted) {
        const count = readSync(descriptor, into, filled, wanted - filled, from + filled);
        if (count === 0) throw shrunk();
        filled += count;
      }
      return filled;
    },
  };
}

function shrunk(): MeasureError {
  return new MeasureError('file.unreadable', 'The file grew shorter while it was read.', {
    expected: 'a file that nothing else writes to',
    received: 'fewer bytes than it had when it was opened',
    advice: 'wait until it is saved or copied whole, and measure it again',
  });
}
