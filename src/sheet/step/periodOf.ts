import type { MeasureResult } from '../../verdict/measureDocument.ts';

/** One cycle of a result's voltage, s: as measured, else as its nominal says, else 20 ms. */
export function periodOf({ voltage, nominal }: Pick<MeasureResult, 'voltage' | 'nominal'>): number {
  return 1 / (voltage?.frequencyHz.value ?? nominal?.frequencyHz ?? 50);
}
