import { open } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import {
  type Comparand,
  type CompareDocument,
  compareCaptures,
  compareLines,
  isSame,
  overlayName,
  readMeasureDocument,
} from '../../entry/comparing.ts';
import { captureEvidence, type OneCapture, overlayEvidence, readEvidence } from '../../entry/evidence.ts';
import { failureLine, jsonText, MeasureError, worded, wordedError } from '../../entry/measuring.ts';
import { exitCodes, unreadable } from '../failures.ts';
import { failedResult, type MeasureFileOptions, measureFile } from '../measureFile.ts';
import { measureFileOptions } from '../measureFiles.ts';
import type { MeasureFlags } from '../measureOptions.ts';
import { version } from '../program.ts';
import { type ProgressLine, progressLine } from '../progressLine.ts';
import { readText, regularFile } from '../reading/readText.ts';
import { openPress } from '../report/openPress.ts';
import { picturePng } from '../report/sealedPng.ts';
import { ownOutput } from '../writing/ownOutput.ts';
import { makeFolder, writeOutput } from '../writing/writeOutput.ts';

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
  const document = worded(compareCaptures(a.comparand, b.comparand, { sameInstrument }));
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

interface OverlayOptions {
  readonly out: string;
  readonly png: boolean;
  readonly force: boolean;
}

/**
 * Writes the sheet of two captures over each other and says where.
 *
 * @throws MeasureError `compare.noWave` where one of them is a result alone; as `writeOutput` does.
 */
async function writeOverlay(
  [a, b]: readonly [Side, Side],
  result: CompareDocument,
  files: readonly [string, string],
  { out, png, force }: OverlayOptions,
): Promise<string> {
  if (a.evidence === null || b.evidence === null) {
    throw wordedError('compare.noWave', 'A result in JSON carries no wave to draw.', {
      expected: 'two sheets or captures',
      advice: 'Leave --out away, or name the capture or its sheet',
    });
  }
  const { sealedSheet } = await import('../../entry/drawing.ts');
  const isBudgeted = a.comparand.budgets !== null && b.comparand.budgets !== null;
  const basis = isBudgeted ? 'budgets' : 'results';
  const evidence = overlayEvidence([a.evidence, b.evidence], result, basis, version);
  const svg = sealedSheet(await openPress(), evidence);
  const sha256 = [result.a.sha256, result.b.sha256];
  const path = join(out, overlayName(files));
  await makeFolder(out);
  const write = (ending: string, content: string | Uint8Array): Promise<void> =>
    writeOutput(`${path}${ending}`, content, { isOwn: ownOutput(sha256), force });
  await write('.svg', svg);
  if (png) await write('.png', await picturePng(svg, sha256));
  return `${path}.svg`;
}

/** One of the two that are compared. */
interface Side {
  readonly comparand: Comparand;
  /** What a sheet of both would carry of it; null for a result without a wave. */
  readonly evidence: OneCapture | null;
}

/**
 * Reads what is named: a sheet or a result as it stands, a capture by measuring it. Which it is, its content says.
 *
 * @throws MeasureError where it can't be read or measured, or is of several captures.
 */
async function readSide(file: string, options: MeasureFileOptions, progress: ProgressLine): Promise<Side> {
  const start = await startOf(file);
  if (start.startsWith('<svg')) return sideOfSheet(await readText(file));
  if (start.startsWith('{')) {
    return {
      comparand: { result: readMeasureDocument(await readText(file)), budgets: null },
      evidence: null,
    };
  }
  progress.begin(file);
  const outcome = await measureFile({ file }, options, { progress });
  if ('failed' in outcome) {
    const { code, message, ...detail } = outcome.failed.error;
    throw wordedError(code, message, detail);
  }
  const [assay] = outcome.assays;
  if (assay === undefined) throw new RangeError('A capture that was measured has a result');
  return {
    comparand: { result: assay.result, budgets: assay.budgets },
    evidence: captureEvidence(assay, 'wave', outcome.options, version),
  };
}

function sideOfSheet(text: string): Side {
  const { evidence } = readEvidence(text);
  if ('told' in evidence || evidence.picture === 'overlay') {
    throw wordedError('sheet.several', 'The sheet is of several captures.', {
      expected: 'a sheet of one capture',
      advice: 'Name the sheets of the two captures, or the captures',
    });
  }
  return { comparand: { result: evidence.result, budgets: null }, evidence };
}

/** The first characters, without a mark of the encoding. */
async function startOf(file: string): Promise<string> {
  try {
    await regularFile(file);
    const handle = await open(file);
    try {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(64), 0, 64, 0);
      return buffer
        .toString('utf8', 0, bytesRead)
        .replace(/^\ufeff/, '')
        .trimStart();
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw error instanceof MeasureError ? error : unreadable(error);
  }
}
