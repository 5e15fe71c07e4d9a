import { en50160 } from './en50160.ts';
import { iec60038 } from './iec60038.ts';
import { iec61000 } from './iec61000.ts';
import { iec62040 } from './iec62040.ts';
import { iec62109 } from './iec62109.ts';
import type { LimitTable } from './limitTable.ts';
import { ansiC84, ieee519, nemaMg1 } from './northAmerica.ts';

/** Every table: first those written for the source itself, then those of the networks it stands in for. */
export function limitTables(): readonly LimitTable[] {
  return [iec62109, iec62040, nemaMg1, ...ansiC84, en50160, iec60038, iec61000, ieee519];
}
