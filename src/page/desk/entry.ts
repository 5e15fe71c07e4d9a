import type { FailedResult } from '../../entry/measuring.ts';
import type { Told } from '../told/told.ts';
import type { Measured } from '../worker/requests.ts';

/** A capture on the page. */
export interface Entry {
  readonly id: number;
  /** As results name it; no two on the page are alike. */
  readonly name: string;
  readonly file: Blob;
  readonly told: Told;
  readonly state: EntryState;
  /** Which of its results is looked at, where it has several. */
  readonly channel: number;
}

export type EntryState =
  /** @property share - how much has been read, 0 to 1; null: its turn has not come. */
  | { readonly at: 'work'; readonly share: number | null; readonly before: Measured | null }
  | { readonly at: 'ready'; readonly measured: Measured }
  | { readonly at: 'failed'; readonly failed: FailedResult };

/** What is known of a capture: while it is measured anew, what was known before; null: nothing yet. */
export function knownOf({ state }: Entry): Measured | null {
  if (state.at === 'ready') return state.measured;
  return state.at === 'work' ? state.before : null;
}
