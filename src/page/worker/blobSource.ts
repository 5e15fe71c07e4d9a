import { type ByteSource, MeasureError } from '../../entry/reading.ts';

/** A file that a person chose, as a source of bytes. Reading stops the thread: of use in a worker only. */
export function blobSource(file: Blob): ByteSource {
  const reader = new FileReaderSync();
  return {
    byteLength: file.size,
    read: (from, into) => {
      const bytes = readPart(reader, file.slice(from, from + into.length));
      into.set(bytes);
      return bytes.length;
    },
  };
}

function readPart(reader: FileReaderSync, part: Blob): Uint8Array {
  try {
    return new Uint8Array(reader.readAsArrayBuffer(part));
  } catch (problem) {
    // The browser says no more than that: the file was changed, moved or locked since it was chosen.
    if (!(problem instanceof DOMException)) throw problem;
    throw unreadable();
  }
}

/** What a file that can't be read any more is refused with. */
export function unreadable(): MeasureError {
  return new MeasureError('file.unreadable', 'The file can’t be read.', {
    expected: 'the file as it was when it was chosen',
    received: 'one that was changed or moved since, or that this browser may not open',
    advice: 'choose it again',
  });
}
