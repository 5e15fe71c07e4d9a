import { MeasureError } from '../../entry/grammar.ts';
import { systemReason } from '../systemReason.ts';

/** Says that a file or folder could not be written, and why. */
export function unwritable(path: string, error: unknown): MeasureError {
  return new MeasureError('file.unwritable', `${path} could not be written.`, {
    expected: 'a place that can be written to',
    received: systemReason(error),
    advice: 'Name another with --out.',
  });
}
