import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import type { Capture, Channel } from '../../capture/capture.ts';
import { channelNamed } from '../../capture/channels/channelNamed.ts';
import { asCurrent } from '../../capture/joining/asCurrent.ts';

export interface CurrentChoice {
  /** Name of the channel; absent: the one that goes with the voltage. */
  readonly current?: string;
  /** Scales that the person gave: a clamp's volts become amperes by one. */
  readonly scales?: readonly { readonly channel: string | null }[];
}

/**
 * The current channel that goes with a voltage: the one named; else, where there are as many currents as
 * voltages, the one of the same rank; else the first.
 *
 * @returns channel null where the capture has no current and none was named.
 * @throws MeasureError `channel.unknown`, `channel.unmeasurable`; `channel.same` where the voltage itself is named.
 */
export function currentOf(
  capture: Capture,
  voltage: Channel,
  { current, scales = [] }: CurrentChoice,
): { readonly channel: Channel | null; readonly notices: readonly Notice[] } {
  if (current !== undefined) {
    const named = channelNamed(capture, current);
    if ([voltage, ...(voltage.differenceOf ?? [])].some(({ name }) => name === named.name))
      throw sameChannel(named.name, capture);
    return asCurrent(
      named,
      scales.some(({ channel }) => channel === named.name),
    );
  }
  const of = (quantity: Channel['quantity']): readonly Channel[] =>
    capture.channels.filter((channel) => channel.quantity === quantity);
  const [voltages, currents] = [of('voltage'), of('current')];
  const rank = voltages.findIndex(({ name }) => name === voltage.name);
  const isPaired = currents.length === voltages.length;
  const channel = (isPaired ? currents[rank] : currents[0]) ?? currents[0] ?? null;
  const left = currents.filter((one) => one !== channel).map(({ name }) => name);
  return {
    channel,
    notices: channel === null || left.length === 0 || isPaired ? [] : [oneOf(channel, left)],
  };
}

function oneOf({ name }: Channel, left: readonly string[]): Notice {
  return {
    code: 'channels.currents',
    message: `${name} is taken for the load’s current, the first of ${1 + left.length}; not looked at: ${left.join(', ')} (--current NAME).`,
  };
}

function sameChannel(name: string, { channels }: Capture): MeasureError {
  const others = channels.map((channel) => channel.name).filter((other) => other !== name);
  return new MeasureError('channel.same', `${name} is the voltage: it can't be the current too.`, {
    expected: others.length === 0 ? 'a second channel' : `one of ${others.join(', ')}`,
    received: name,
    advice:
      others.length === 0
        ? "leave --current out: the capture has no channel of a clamp's or shunt's"
        : "name the clamp's or shunt's channel with --current",
  });
}

/** How much later the current shows an event than the voltage; nothing where neither delay was told. */
export function skewOf(
  voltage: string,
  current: string,
  skews: readonly { readonly channel: string; readonly seconds: number }[],
): { readonly skewS?: number } {
  const told = skews.filter(({ channel }) => channel === voltage || channel === current);
  if (told.length === 0) return {};
  const skewS = told.reduce(
    (sum, { channel, seconds }) => sum + (channel === current ? seconds : -seconds),
    0,
  );
  return { skewS };
}
