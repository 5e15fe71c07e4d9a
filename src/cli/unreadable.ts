import { MeasureError } from '../entry/grammar.ts';
import { systemReason } from './systemReason.ts';

/** What the system said of a file that it would not hand over. */
export function unreadable(problem: unknown): MeasureError {
  return new MeasureError('file.unreadable', 'The file could not be read.', {
    expected: 'a file that you may read',
    received: systemReason(problem),
    advice: 'Check that it is there, not open elsewhere, and that you may read it',
  });
}
