import { type MeasureError, wordedError } from '../entry/grammar.ts';

/** What the command's exit code tells a script. */
export const exitCodes = {
  /** Measured, and every claim given holds. */
  ok: 0,
  /** A claim fails, probably fails, or can't be judged. */
  claim: 1,
  /** Wrong words on the command line, or a file that could not be read or measured. */
  usage: 2,
  /** A defect of this program. */
  defect: 3,
} as const;

const words: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EEXIST: 'a file of that name in the way',
  EISDIR: 'a folder of that name',
  ELOOP: 'a link that leads back to itself',
  ENAMETOOLONG: 'a name that is too long',
  ENOENT: 'no such file or folder',
  ENOSPC: 'a full disk',
  ENXIO: 'a device or socket that nothing answers from',
  ENOTDIR: 'a file where a folder should be',
  EPERM: 'no permission',
  EROFS: 'a disk that can only be read',
};

/** What stood in the way of reading or writing a file, in words, or as the system's own code. */
export function systemReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  return words[code] ?? code;
}

/** What the system said of a file that it would not hand over. */
export function unreadable(problem: unknown): MeasureError {
  return wordedError('file.unreadable', 'The file could not be read.', {
    expected: 'a file that you may read',
    received: systemReason(problem),
    advice: 'Check that it is there, not open elsewhere, and that you may read it',
  });
}

/** Says that a file or folder could not be written, and why. */
export function unwritable(path: string, error: unknown): MeasureError {
  return wordedError('file.unwritable', `${path} could not be written.`, {
    expected: 'a place that can be written to',
    received: systemReason(error),
    advice: 'Name another with --out.',
  });
}
