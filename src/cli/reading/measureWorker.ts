import type { Found } from '../findCaptures.ts';
import { type FileOutcome, type MeasureFileOptions, measureFile } from '../measureFile.ts';

export interface MeasureTask {
  readonly found: Found;
  readonly options: MeasureFileOptions;
}

/** What a thread of the pool does: the other cores have files of their own. */
export default function measureAlone({ found, options }: MeasureTask): Promise<FileOutcome> {
  return measureFile(found, options, { workers: 0 });
}
