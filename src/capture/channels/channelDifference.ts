import { MeasureError } from '../../base/measureError.ts';
import type { Channel } from '../capture.ts';
import { gapsOf } from './gapsOf.ts';

/**
 * One channel minus another, as two probes on the two poles of an outlet give its voltage.
 *
 * @returns a channel named `A-B`, missing where either is.
 * @throws MeasureError `channel.difference` where the two aren't both voltages or both currents.
 */
export function channelDifference(plus: Channel, minus: Channel): Channel {
  if (plus.quantity !== minus.quantity || plus.quantity === 'other') {
    throw new MeasureError('channel.difference', `${plus.name} and ${minus.name} can't be subtracted.`, {
      expected: 'two voltages or two currents',
      received: `${plus.quantity} and ${minus.quantity}`,
      advice: 'name two channels of one kind; for channels in counts give their --scale',
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
