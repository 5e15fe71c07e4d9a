import { compareCaptures } from '../../entry/comparing.ts';
import { captureEvidence, overlayEvidence } from '../../entry/evidence.ts';
import {
  type Assay,
  assayCapture,
  type Capture,
  fieldOf,
  fileAndChannel,
  joinCurrent,
  measuredNames,
  rescaleCapture,
  selectVoltageChannels,
  type ToldOptions,
  worded,
  wordedError,
} from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { type WaveColumns, waveColumns } from '../wave/waveColumns.ts';
import { type HeldFile, type HeldFiles, heldFile, type ShownChannel, type Task } from './heldCaptures.ts';
import { readBlob } from './readBlob.ts';
import type { Measured, MeasuredChannel, OverlaySide, Requests } from './requests.ts';

/**
 * Measures a file that is held; reads it first where that was not done yet.
 *
 * @throws MeasureError as `readCapture` and `assayCapture` do; `Cancelled`.
 */
export async function measureHeld(
  files: HeldFiles,
  { id, options: told, isInverted }: Requests['measure']['given'],
  task: Task,
): Promise<Measured> {
  const held = heldFile(files, id);
  const { capture: whole, sha256 } = await readHeld(held, told.sampleRateHz, task);
  const options = isInverted ? { ...told, inverted: measuredNames(whole, told.voltage) } : told;
  const assays = await assayHeld(held, files, options, task);
  held.measured = { options, assays };
  held.shown = null;
  held.outlet = null;
  return {
    sha256,
    channels: whole.channels.map(({ name, quantity, unit }) => ({ name, quantity, unit })),
    startS: whole.startS,
    intervalS: whole.intervalS,
    endS: whole.startS + (whole.sampleCount - 1) * whole.intervalS,
    assays: assays.map((assay) => measuredChannel(assay, options)),
  };
}

function measuredChannel(assay: Assay, options: ToldOptions): MeasuredChannel {
  return {
    result: worded(assay.result),
    shown: worded(assay.result, fieldOf),
    method: assay.method,
    zeroS: assay.trace.zeroS ?? assay.result.capture.startS,
    wave: captureEvidence(assay, 'wave', options, version),
    changes: assay.dynamics === null ? null : captureEvidence(assay, 'changes', options, version),
  };
}

/**
 * Measures a file that is held with some options; reads it first where that was not done yet.
 *
 * @throws MeasureError as `readCapture` and `assayCapture` do; `Cancelled`.
 */
export async function assayHeld(
  held: HeldFile,
  files: HeldFiles,
  options: ToldOptions,
  task: Task,
): Promise<readonly Assay[]> {
  const { capture: whole, sha256 } = await readHeld(held, options.sampleRateHz, task);
  const { capture, current } = await withCurrent(whole, files, options, task);
  const own = current === undefined ? options : { ...options, current };
  return assayCapture(capture, { file: held.name, sha256 }, own);
}

/** The current may stand in another file on the page: `FILE` or `FILE:NAME` where the capture has no such channel. */
async function withCurrent(
  capture: Capture,
  files: HeldFiles,
  { current: wanted, sampleRateHz }: ToldOptions,
  task: Task,
): Promise<{ readonly capture: Capture; readonly current: string | undefined }> {
  if (wanted === undefined || capture.channels.some(({ name }) => name === wanted))
    return { capture, current: wanted };
  const { file, channel } = fileAndChannel(wanted);
  const other = [...files.values()].find(({ name }) => name === file);
  if (other === undefined) return { capture, current: wanted };
  return joinCurrent(capture, (await readHeld(other, sampleRateHz, task)).capture, channel);
}

/**
 * A file that is held, read; at once where it was read so already.
 *
 * @param sampleRateHz - for a file without a time of its own; undefined: not told.
 * @throws MeasureError as `readCapture` does; `Cancelled`.
 */
async function readHeld(
  held: HeldFile,
  sampleRateHz: number | undefined,
  task: Task,
): Promise<NonNullable<HeldFile['read']>> {
  if (held.read === null || held.read.sampleRateHz !== sampleRateHz) {
    const read = await readBlob(held.file, sampleRateHz === undefined ? {} : { sampleRateHz }, task);
    held.read = { ...read, sampleRateHz };
  }
  return held.read;
}

/** Two captures held against each other. @throws MeasureError `file.closed`, `file.unmeasured`. */
export function overlayHeld(
  files: HeldFiles,
  { sides: [ofA, ofB], sameInstrument }: Requests['overlay']['given'],
): Requests['overlay']['answer'] {
  const [a, b] = [sideOf(files, ofA), sideOf(files, ofB)];
  const result = compareCaptures(a.assay, b.assay, { sameInstrument });
  const carried = ({ assay, options }: typeof a) => captureEvidence(assay, 'wave', options, version);
  return {
    evidence: overlayEvidence([carried(a), carried(b)], worded(result), 'budgets', version),
    shown: worded(result, fieldOf),
  };
}

function sideOf(
  files: HeldFiles,
  { id, channel }: OverlaySide,
): { readonly assay: Assay; readonly options: ToldOptions } {
  const { name, measured } = heldFile(files, id);
  const assay = measured?.assays[channel];
  if (measured === null || assay === undefined)
    throw wordedError('file.unmeasured', `Nothing was measured of ${name} yet.`);
  return { assay, options: measured.options };
}

/** A stretch of a channel in columns, scale and sign as it was measured. @throws MeasureError `channel.unknown`. */
export function viewHeld(
  files: HeldFiles,
  { id, channel: name, fromS, toS, count }: Requests['columns']['given'],
): WaveColumns {
  const held = heldFile(files, id);
  held.shown ??= measuredChannels(held);
  const shown = held.shown.find(({ channel }) => channel.name === name);
  if (shown === undefined) throw wordedError('channel.unknown', `Nothing was measured of a channel ${name}.`);
  const { startS, intervalS, channel, factor } = shown;
  const columns = waveColumns({ startS, intervalS, samples: channel.samples }, fromS, toS, count);
  return factor === 1 ? columns : scaled(columns, factor);
}

function measuredChannels({ read, measured }: HeldFile): ShownChannel[] {
  if (read === null || measured === null) return [];
  const { scales = [], inverted = [], voltage } = measured.options;
  const capture = rescaleCapture(read.capture, { scales, inverted, measured: voltage });
  return selectVoltageChannels(capture, voltage).channels.map((channel, i) => {
    const told = measured.assays[i]?.result.capture.channels.find(({ name }) => name === channel.name);
    const factor = told === undefined ? 1 : told.scale / channel.scale;
    return { startS: capture.startS, intervalS: capture.intervalS, channel, factor };
  });
}

function scaled({ timeS, low, high }: WaveColumns, factor: number): WaveColumns {
  const by = (values: Float64Array): Float64Array => values.map((value) => value * factor);
  return factor > 0 ? { timeS, low: by(low), high: by(high) } : { timeS, low: by(high), high: by(low) };
}
