import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import type { Channel } from '../capture.ts';

export interface CurrentChannel {
  readonly channel: Channel;
  readonly notices: readonly Notice[];
}

/**
 * A channel that the person says is the current: a clamp or shunt gives volts, and a scope that wasn't told
 * saves them as volts.
 *
 * @param isScaled - true where the person gave its ratio: amperes per unit, already applied.
 * @throws MeasureError `channel.unmeasurable` where its unit is neither volts, amperes nor none.
 */
export function asCurrent(channel: Channel, isScaled: boolean): CurrentChannel {
  if (channel.quantity === 'current') return { channel, notices: [] };
  const { name, unit } = channel;
  if (channel.quantity === 'other' && unit !== '' && unit !== 'counts') {
    throw new MeasureError('channel.unmeasurable', `${name} is not a current.`, {
      expected: "a clamp's or shunt's channel, in A or V",
      received: `a channel in ${unit}`,
      advice: 'name the channel that the clamp or shunt is on',
    });
  }
  const notices: Notice[] = isScaled
    ? []
    : [
        {
          code: 'current.scaleAssumed',
          message: `${name} is in ${unit === '' ? 'no unit' : unit}: one is taken as 1 A. Give the clamp's amperes per volt with --scale ${name}=FACTOR (10 for 100 mV/A).`,
        },
      ];
  return { channel: { ...channel, quantity: 'current', unit: 'A' }, notices };
}
