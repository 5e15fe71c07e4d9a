import { MeasureError, rescaleCapture, selectVoltageChannels } from '../../entry/measuring.ts';
import { type WaveColumns, waveColumns } from '../wave/waveColumns.ts';
import { type HeldFile, type HeldFiles, heldFile, type ShownChannel } from './heldCaptures.ts';
import type { Requests } from './requests.ts';

/** A stretch of a channel in columns, scale and sign as it was measured. @throws MeasureError `channel.unknown`. */
export function viewHeld(
  files: HeldFiles,
  { id, channel: name, fromS, toS, count }: Requests['columns']['given'],
): WaveColumns {
  const held = heldFile(files, id);
  held.shown ??= measuredChannels(held);
  const shown = held.shown.find(({ channel }) => channel.name === name);
  if (shown === undefined)
    throw new MeasureError('channel.unknown', `Nothing was measured of a channel ${name}.`);
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
