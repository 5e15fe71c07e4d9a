import type { Command } from 'commander';
import { compareCaptures, compareLines, isSame } from '../../entry/comparing.ts';
import { failureLine, jsonText, MeasureError } from '../../entry/measuring.ts';
import { exitCodes } from '../exitCodes.ts';
import { failedResult } from '../measureFile.ts';
import { measureFileOptions } from '../measureFileOptions.ts';
import type { MeasureFlags } from '../measureOptions.ts';
import { progressLine } from '../progress/progressLine.ts';
import { readSide, type Side } from './readSide.ts';
import { writeOverlay } from './writeOverlay.ts';

/** The flags of `compare` as commander hands them over. */
export interface CompareFlags extends MeasureFlags {
  readonly sameInstrument?: boolean;
  readonly same?: boolean;
  readonly out?: string;
  readonly png?: boolean;
  readonly force?: boolean;
}

/** Compares two files, prints what differs, and sets the exit code. */
export async function compareFiles(
  files: readonly [a: string, b: string],
  flags: CompareFlags,
  command: Command,
): Promise<void> {
  const options = await measureFileOptions(flags, command);
  const progress = progressLine(files.length, { quiet: flags.quiet });
  const sides: Side[] = [];
  for (const file of files) {
    try {
      sides.push(await readSide(file, options, progress));
    } catch (error) {
      progress.clear();
      fail(file, error);
    }
  }
  progress.clear();
  const [a, b] = sides;
  if (a === undefined || b === undefined || sides.length < files.length) return;
  const { sameInstrument = false } = flags;
  const document = compareCaptures(a.comparand, b.comparand, { sameInstrument });
  process.exitCode = flags.same && !isSame(document) ? exitCodes.claim : exitCodes.ok;
  let sheetPath: string | undefined;
  if (flags.out !== undefined) {
    const { out, png = false, force = false } = flags;
    try {
      sheetPath = await writeOverlay([a, b], document, files, { out, png, force });
    } catch (error) {
      // What was compared still stands.
      fail(out, error);
    }
  }
  if (flags.json) process.stdout.write(`${jsonText(document, 2)}\n`);
  else {
    const width = Math.min(100, process.stdout.columns ?? 80);
    const all = flags.all ?? false;
    const shown = { width, all, ...(sheetPath === undefined ? {} : { sheetPath }) };
    process.stdout.write(`${compareLines(document, shown).join('\n')}\n`);
  }
}

function fail(file: string, error: unknown): void {
  if (!(error instanceof MeasureError)) throw error;
  process.stderr.write(`${failureLine(failedResult(file, error))}\n`);
  process.exitCode = exitCodes.usage;
}
