import type { MeasureError } from '../base/measureError.ts';
import type { Capture, Channel, OverRange } from './capture.ts';
import { readError } from './readErrors.ts';
import { channelNamed, differenceNames } from './selectChannel.ts';

export interface Rescaling {
  /** Ratios to multiply by; `channel` null: the measured channel or channels. */
  readonly scales: readonly { readonly channel: string | null; readonly factor: number }[];
  /** Names of channels to turn upside down. */
  readonly inverted: readonly string[];
  /** Which channels are measured, as `selectVoltageChannels` takes it. */
  readonly measured: string | undefined;
  /** True where nobody else reads the samples: they are changed, and no second array is made. Default false. */
  readonly inPlace?: boolean;
}

/** No probe, divider or clamp has a ratio beyond these. */
const [SMALLEST, LARGEST] = [1e-12, 1e12];

function absurdScale(factor: number): MeasureError {
  return readError('scale.absurd', { factor, least: SMALLEST, most: LARGEST });
}

/**
 * Applies probe, divider or clamp ratios and inversions. A channel in bare counts or without a unit that is
 * given a ratio is a voltage from then on.
 *
 * @returns a capture of its own; channels that nothing was said of are shared with the one given, as are, in place,
 * the samples of all.
 * @throws MeasureError `channel.unknown`; `scale.absurd`.
 * @throws RangeError where a factor is zero or not finite.
 */
export function rescaleCapture(
  capture: Capture,
  { scales, inverted, measured, inPlace = false }: Rescaling,
): Capture {
  const factors = new Map<string, number>();
  const multiply = (name: string, factor: number): void => {
    factors.set(name, (factors.get(name) ?? 1) * factor);
  };
  const scaled = new Set<string>();
  for (const { channel, factor } of scales) {
    if (!Number.isFinite(factor) || factor === 0)
      throw new RangeError(`A scale must be a finite number other than 0, not ${factor}`);
    if (!(Math.abs(factor) >= SMALLEST && Math.abs(factor) <= LARGEST)) throw absurdScale(factor);
    const names = channel === null ? measuredNames(capture, measured) : [channelNamed(capture, channel).name];
    for (const name of names) {
      multiply(name, factor);
      scaled.add(name);
    }
  }
  for (const name of inverted) multiply(channelNamed(capture, name).name, -1);
  if (factors.size === 0) return capture;
  const [first, ...others] = capture.channels.map((channel) => {
    const factor = factors.get(channel.name);
    if (factor === undefined) return channel;
    const samples = inPlace ? channel.samples : channel.samples.slice();
    for (let n = 0; n < samples.length; n++) samples[n]! *= factor;
    return { ...rescaled(channel, factor, scaled.has(channel.name)), samples };
  });
  const notices = capture.notices.filter(
    ({ code }) =>
      (code !== 'counts.unscaled' || hasBareCounts(capture, scaled)) &&
      (code !== 'scale.implied' || !capture.impliedScales?.some((name) => scaled.has(name))),
  );
  return { ...capture, channels: [first!, ...others], notices };
}

/** All of it but the samples. */
function rescaled(channel: Channel, factor: number, isScaled: boolean): Channel {
  const isVoltageNow = isScaled && isWithoutUnit(channel);
  return {
    ...channel,
    quantity: isVoltageNow ? 'voltage' : channel.quantity,
    unit: isVoltageNow ? 'V' : channel.unit,
    scale: channel.scale * factor,
    ...(channel.overRange === undefined ? {} : { overRange: rescaledRange(channel.overRange, factor) }),
    // One count is the smallest step there is.
    stepSize:
      channel.unit === 'counts'
        ? Math.abs(factor)
        : channel.stepSize === null
          ? null
          : channel.stepSize * Math.abs(factor),
  };
}

function hasBareCounts(capture: Capture, scaled: ReadonlySet<string>): boolean {
  return capture.channels.some((channel) => channel.unit === 'counts' && !scaled.has(channel.name));
}

function rescaledRange({ sampleCount, top, bottom }: OverRange, factor: number): OverRange {
  const [high, low] = factor < 0 ? [bottom, top] : [top, bottom];
  return {
    sampleCount,
    top: high === null ? null : high * factor,
    bottom: low === null ? null : low * factor,
  };
}

/**
 * The channels that a bare ratio or inversion means: those measured, or that would be if they were in volts; both of a
 * difference.
 *
 * @param measured - as `selectVoltageChannels` takes it.
 * @throws MeasureError `channel.unknown`.
 */
export function measuredNames(capture: Capture, measured: string | undefined): string[] {
  const names = capture.channels.map((channel) => channel.name);
  if (measured === undefined || (measured.toLowerCase() === 'all' && !names.includes(measured))) {
    const candidates = measurableNames(capture);
    return measured === undefined ? candidates.slice(0, 1) : candidates;
  }
  const pair = names.includes(measured) ? null : differenceNames(measured, names);
  return (pair ?? [measured]).map((name) => channelNamed(capture, name).name);
}

/** Voltages; where there is none, currents; where there is neither, channels that a ratio makes voltages. */
function measurableNames(capture: Capture): string[] {
  const named = (isWanted: (channel: Channel) => boolean): string[] =>
    capture.channels.filter(isWanted).map((channel) => channel.name);
  const voltages = named((channel) => channel.quantity === 'voltage');
  const currents = named((channel) => channel.quantity === 'current');
  if (voltages.length > 0) return voltages;
  return currents.length > 0 ? currents : named(isWithoutUnit);
}

/** True of a channel in bare counts or in nothing: a ratio makes a voltage of it. */
function isWithoutUnit({ quantity, unit }: Channel): boolean {
  return quantity === 'other' && (unit === '' || unit === 'counts');
}
