import { type FileOutcome, type MeasureTask, measureFile } from '../measureFile.ts';

/** What a thread of the pool does: the other cores have files of their own. */
export default function measureAlone({ found, options }: MeasureTask): Promise<FileOutcome> {
  return measureFile(found, options, { workers: 0 });
}
