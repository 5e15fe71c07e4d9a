import { failureLine, MeasureError, type MeasureResult } from '../../entry/measuring.ts';
import { exitCodes } from '../failures.ts';
import { failedResult } from '../measureFile.ts';
import type { Formats } from './formatOptions.ts';

interface FinishOptions {
  /** The folder of results. */
  readonly out: string;
  readonly formats: Formats;
  readonly force: boolean;
}

/**
 * Writes what belongs to a whole run, at its end: the table of its figures, the gallery of the folder. What can't
 * be written is said, and sets the exit code; what was measured still stands.
 */
export async function finishRun(
  results: readonly MeasureResult[],
  { out, formats, force }: FinishOptions,
): Promise<void> {
  const tried = async (file: string, write: () => Promise<void>): Promise<void> => {
    try {
      await write();
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      process.stderr.write(`${failureLine(failedResult(file, error))}\n`);
      process.exitCode = exitCodes.usage;
    }
  };
  if (formats.csv && results.length > 0) {
    const { writeFigures } = await import('./writeGallery.ts');
    await tried(`${out}/figures.csv`, () => writeFigures(results, out, force));
  }
  if (formats.gallery) {
    const { writeGallery } = await import('./writeGallery.ts');
    await tried(`${out}/index.html`, () => writeGallery(out, force));
  }
}
