import { type Capture, type Channel, gapsOf } from './capture.ts';
import type { ReadNotice } from './notices.ts';
import { readError } from './readErrors.ts';

interface SelectedChannels {
  /** At least one, voltages; currents where the capture has only those or one was named. */
  readonly channels: readonly Channel[];
  readonly notices: readonly ReadNotice[];
}

/**
 * The channels to measure.
 *
 * @param name - a channel's name, `A-B` for the difference of two, `all` for every voltage channel (every
 * current where there is no voltage); absent: the first voltage channel, the others being named in a
 * notice. A channel that bears such a name itself goes first.
 * @throws MeasureError `channel.unknown` where there is none of that name; `channel.unmeasurable` where it
 * carries neither volts nor amperes; `channels.none` where no channel does.
 */
export function selectVoltageChannels(capture: Capture, name?: string): SelectedChannels {
  const wanted = name?.trim();
  if (wanted === undefined || wanted === '') return firstMeasurable(capture);
  const names = capture.channels.map((channel) => channel.name);
  if (!names.includes(wanted)) {
    if (wanted.toLowerCase() === 'all') return { channels: measurable(capture), notices: [] };
    const pair = differenceNames(wanted, names);
    if (pair !== null) {
      const [plus, minus] = [channelNamed(capture, pair[0]), channelNamed(capture, pair[1])];
      return { channels: [channelDifference(plus, minus)], notices: [] };
    }
  }
  const channel = channelNamed(capture, wanted);
  if (channel.quantity === 'other')
    throw readError('channel.unmeasurable', { channel: channel.name, unit: channel.unit });
  return { channels: [channel], notices: [] };
}

/** Every voltage channel, or every current where there is no voltage. */
function measurable(capture: Capture): readonly [Channel, ...Channel[]] {
  const voltages = capture.channels.filter((channel) => channel.quantity === 'voltage');
  const currents = capture.channels.filter((channel) => channel.quantity === 'current');
  const [first, ...others] = voltages.length > 0 ? voltages : currents;
  if (first === undefined) {
    const named = capture.channels.map(({ name, unit }) => ({ name, unit }));
    throw readError('channels.none.measurable', { channels: named });
  }
  return [first, ...others];
}

function firstMeasurable(capture: Capture): SelectedChannels {
  const [first, ...others] = measurable(capture);
  const notices: ReadNotice[] = [];
  if (first.quantity === 'current') {
    notices.push({ code: 'channels.currentOnly', channel: first.name });
  }
  if (others.length > 0) {
    const names = others.map(({ name }) => name);
    notices.push({ code: 'channels.others', first: first.name, unit: first.unit, others: names });
  }
  const larger = farLarger(first, others);
  if (larger !== null) notices.unshift(larger);
  return { channels: [first], notices };
}

/** By this much more swing another channel is the likelier outlet. */
const FAR_LARGER = 5;

/** Doubt whether the first channel is the one that was meant, where another carries far more; null where none does. */
function farLarger(first: Channel, others: readonly Channel[]): ReadNotice | null {
  const own = roughSwing(first);
  const swings = others.map((channel) => ({ channel, swing: roughSwing(channel) }));
  const [largest] = swings.sort((a, b) => b.swing - a.swing);
  if (largest === undefined || largest.swing <= FAR_LARGER * own) return null;
  const { channel, swing } = largest;
  return {
    code: 'channels.larger',
    ...{ channel: channel.name, swing, unit: channel.unit, first: first.name },
    times: own > 0 ? swing / own : null,
  };
}

const LOOKS = 4096;

/** RMS about the mean, from some thousand samples spread over the record: enough to tell a factor. */
function roughSwing({ samples }: Channel): number {
  const stride = Math.max(1, Math.floor(samples.length / LOOKS));
  let [count, sum, squares] = [0, 0, 0];
  for (let n = 0; n < samples.length; n += stride) {
    const value = samples[n]!;
    if (!Number.isFinite(value)) continue;
    count++;
    sum += value;
    squares += value * value;
  }
  return count === 0 ? 0 : Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2));
}

/**
 * The channel of a name: exact, else the only one that differs in case alone.
 *
 * @throws MeasureError `channel.unknown`, naming those that exist.
 */
export function channelNamed(capture: Capture, name: string): Channel {
  const wanted = name.trim();
  const exact = capture.channels.find((channel) => channel.name === wanted);
  if (exact !== undefined) return exact;
  const alike = capture.channels.filter((channel) => channel.name.toLowerCase() === wanted.toLowerCase());
  if (alike.length === 1) return alike[0]!;
  throw readError('channel.unknown', { wanted, channels: capture.channels.map((channel) => channel.name) });
}

/**
 * One channel minus another, as two probes on the two poles of an outlet give its voltage.
 *
 * @returns a channel named `A-B`, missing where either is.
 * @throws MeasureError `channel.difference` where the two aren't both voltages or both currents.
 */
function channelDifference(plus: Channel, minus: Channel): Channel {
  if (plus.quantity !== minus.quantity || plus.quantity === 'other') {
    throw readError('channel.difference', {
      names: [plus.name, minus.name],
      quantities: [plus.quantity, minus.quantity],
    });
  }
  // A missing sample is NaN, and so is the difference.
  const samples = plus.samples.map((sample, i) => sample - minus.samples[i]!);
  return {
    name: `${plus.name}-${minus.name}`,
    quantity: plus.quantity,
    unit: plus.unit,
    scale: 1,
    differenceOf: [plus, minus],
    samples,
    gaps: gapsOf(samples),
    stepSize: plus.stepSize === minus.stepSize ? plus.stepSize : null,
    coupling: plus.coupling === 'AC' || minus.coupling === 'AC' ? 'AC' : (plus.coupling ?? null),
  };
}

/**
 * The two channels that `CH1-CH2` means, where both exist. A name may hold a hyphen itself.
 *
 * @returns null where the text is no difference of two of the names.
 */
export function differenceNames(text: string, names: readonly string[]): readonly [string, string] | null {
  const has = (name: string): boolean => names.some((known) => known.toLowerCase() === name.toLowerCase());
  for (let at = text.indexOf('-'); at >= 0; at = text.indexOf('-', at + 1)) {
    const [plus, minus] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
    if (has(plus) && has(minus)) return [plus, minus];
  }
  return null;
}
