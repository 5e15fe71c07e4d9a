import { alikeWithin, type Component } from '../doubt/component.ts';
import type { Instrument } from '../doubt/instrument.ts';

interface DifferenceDoubts {
  /** RMS of the channel that is counted positive, of the one taken off it, and of their difference, in U. */
  readonly plusRms: number;
  readonly minusRms: number;
  /** > 0. */
  readonly differenceRms: number;
  /** Of the fundamental. */
  readonly frequencyHz: number;
  readonly instrument: Pick<Instrument, 'gainPercent' | 'probePercent'>;
  /** How far the two probes may be apart in time, each way. Two probes of one make: under 1 µs. */
  readonly skewDoubtS: number;
}

/**
 * What the RMS of a difference of two channels is off by where their probes don't match: two gains, two
 * ratios and the time between them. They take the place of the one gain and one ratio of a single channel.
 *
 * d = a − b: ∂D/∂a = ⟨a·d⟩ / D = (A² − B² + D²) / 2D, and likewise for b
 *
 * @returns components of the RMS, in U.
 * @remarks Two poles in antiphase share the doubt (D = A + B, so that each counts for its own part); a large
 * voltage common to both makes it many times that of D. The skew counts by the part of a in quadrature with
 * b, as of sines of these RMS values; in antiphase it is nothing.
 */
export function differenceComponents(doubts: DifferenceDoubts): Component[] {
  const { plusRms, minusRms, differenceRms, frequencyHz, instrument, skewDoubtS } = doubts;
  const ofPlus = (plusRms ** 2 - minusRms ** 2 + differenceRms ** 2) / (2 * differenceRms);
  const ofMinus = differenceRms - ofPlus;
  // ⟨a·b⟩; what is left of A·B stands across.
  const common = (plusRms ** 2 + minusRms ** 2 - differenceRms ** 2) / 2;
  const across = Math.sqrt(Math.max(0, (plusRms * minusRms) ** 2 - common ** 2));
  const perSecond = (2 * Math.PI * frequencyHz * across) / differenceRms;
  return [
    alikeWithin('vertical gain of the first channel', instrument.gainPercent, '%', ofPlus / 100),
    alikeWithin('probe ratio of the first channel', instrument.probePercent, '%', ofPlus / 100),
    alikeWithin('vertical gain of the second channel', instrument.gainPercent, '%', ofMinus / 100),
    alikeWithin('probe ratio of the second channel', instrument.probePercent, '%', ofMinus / 100),
    alikeWithin('time between the two probes', skewDoubtS, 's', perSecond),
  ];
}
