import { InvalidArgumentError } from 'commander';
import type { SynthesisOptions } from '../../entry/synthesis.ts';
import { finiteNumber } from './finiteNumber.ts';

export type Harmonic = NonNullable<SynthesisOptions['harmonics']>[number];

/** One more harmonic: `3=5` is order 3 at 5 % of the fundamental, `3=5@90` the same 90 degrees ahead. */
export function harmonic(text: string, earlier: readonly Harmonic[] = []): readonly Harmonic[] {
  const [, order, percent, degrees = '0'] = /^([^=]+)=([^@]+)(?:@(.+))?$/.exec(text) ?? [];
  if (order === undefined || percent === undefined) {
    throw new InvalidArgumentError('An order and a percentage are expected, like 3=5 or 3=5@90.');
  }
  const phaseRad = (finiteNumber(degrees) * Math.PI) / 180;
  return [...earlier, { order: finiteNumber(order), ratio: finiteNumber(percent) / 100, phaseRad }];
}
