import { log2 } from '../../base/elementary/log2.ts';
import { type HannPower, hannPower } from '../../signal/hannPower.ts';
import { median } from '../../signal/median.ts';
import { middleStretch } from '../../signal/middleStretch.ts';
import type { Residual } from '../../signal/residual.ts';
import { powerOfTwoAtLeast } from '../../signal/spectrum.ts';
import { BANDS_FROM_HZ } from './bandsOf.ts';
import type { Ripple, RippleLine } from './ripple.ts';

export interface RippleInput {
  /** What the harmonics leave of the record; NaN where a sample is missing. */
  readonly residual: Residual;
  /** Its spectrum where that was taken already; another is taken where it is of another length than is wanted. */
  readonly residualPower?: HannPower | null;
  readonly intervalS: number;
  readonly fundamentalHz: number;
  /** In U. Ripple of under a thousandth of it is none. */
  readonly fundamentalRms: number;
}

/** Sidebands looked for, in multiples of the fundamental. */
const REACH = 6;
/** Over the noise: the highest of a million bins of white noise stands ln N = 14 times above the mean. */
const PROMINENT = 25;

/**
 * The switching ripple of a converter: the strongest line above 2 kHz with its sidebands at multiples of the
 * fundamental.
 *
 * @returns null where no line stands out of the noise or reaches a thousandth of the fundamental.
 * @remarks Pulse-width modulation spreads its carrier over lines n·f0 away, alike on both sides: the bipolar kind
 * keeps the carrier and its even sidebands, the unipolar kind the odd ones without the carrier. So the frequency
 * is the power's centre, rounded to whole multiples of the fundamental from the strongest line. Switching that is
 * synchronous and below the highest order fitted counts as harmonics.
 */
export function findRipple({
  residual,
  residualPower = null,
  intervalS,
  fundamentalHz,
  fundamentalRms,
}: RippleInput): Ripple | null {
  // Bins of a sixteenth of the fundamental part its sidebands well; a longer record would part no more. Six cycles part
  // them too, and are enough where sixteen would be many samples.
  const periodSamples = 1 / (fundamentalHz * intervalS);
  const enough = Math.max(2 ** 17, powerOfTwoAtLeast(6 * periodSamples));
  const longest = Math.min(2 ** 20, enough, powerOfTwoAtLeast(16 * periodSamples));
  const size = 2 ** Math.floor(log2(Math.min(residual.length, longest)));
  const isTaken = residualPower !== null && 2 * (residualPower.power.length - 1) === size;
  const spectrum = isTaken ? residualPower : hannPower(middleStretch(residual, size));
  if (spectrum === null) return null;
  const { power } = spectrum;
  const binHz = spectrum.binOmega / (2 * Math.PI * intervalS);
  const first = Math.ceil(BANDS_FROM_HZ / binHz) + 2;
  const last = power.length - 3;
  if (last - first < 16) return null;
  let best = first;
  for (let k = first; k <= last; k++) if (power[k]! > power[best]!) best = k;
  const noise = noiseAround(power, best, first, last);
  if (!(power[best]! > PROMINENT * noise)) return null;

  const lobe = (bin: number): number => {
    let sum = 0;
    for (let k = Math.max(first, bin - 2); k <= Math.min(last, bin + 2); k++) sum += power[k]!;
    return sum;
  };
  const strongestHz = binHz * centroid(power, best);
  const isParted = fundamentalHz >= 5 * binHz;
  const atOffset = (centreHz: number, offset: number): number =>
    lobe(Math.round((centreHz + offset * fundamentalHz) / binHz));
  const frequencyHz = isParted
    ? strongestHz + fundamentalHz * middleOffset((offset) => atOffset(strongestHz, offset))
    : strongestHz;

  const halfWidthHz = Math.max(3 * binHz, isParted ? (REACH + 0.5) * fundamentalHz : REACH * fundamentalHz);
  const from = Math.max(first, Math.round((frequencyHz - halfWidthHz) / binHz));
  const to = Math.min(last, Math.round((frequencyHz + halfWidthHz) / binHz));
  let total = 0;
  for (let k = from; k <= to; k++) total += power[k]!;
  const bins = to - from + 1;
  const rms = Math.sqrt(Math.max(0, total - bins * noise));
  if (!(rms > 1e-3 * fundamentalRms)) return null;
  return {
    frequencyHz,
    frequencyWithinHz: binHz / 10,
    rms,
    // Bins of a Hann window are 1.5 bins wide, so neighbours share their noise.
    rmsDeviation: Math.sqrt(1.5 * (bins * noise * noise + 2 * rms * rms * noise)) / (2 * rms),
    lines: isParted
      ? linesAround(frequencyHz, fundamentalHz, (offset) => atOffset(frequencyHz, offset), noise)
      : null,
  };
}

/**
 * Mean noise power a bin around a line. Real noise falls with frequency, so a quarter up and down is looked at;
 * the median of an exponential distribution is ln 2 of its mean, and lines hardly move it.
 */
function noiseAround(power: Float64Array, bin: number, first: number, last: number): number {
  const reach = Math.max(64, Math.round(bin / 4));
  const nearby = power.subarray(Math.max(first, bin - reach), Math.min(last, bin + reach) + 1);
  return median(nearby) / Math.LN2;
}

function centroid(power: Float64Array, bin: number): number {
  let sum = 0;
  let moment = 0;
  for (let k = bin - 2; k <= bin + 2; k++) {
    sum += power[k]!;
    moment += k * power[k]!;
  }
  return moment / sum;
}

/** Whole multiples of the fundamental from the strongest line to the middle of the cluster. */
function middleOffset(powerAt: (offset: number) => number): number {
  let sum = 0;
  let moment = 0;
  for (let offset = -REACH; offset <= REACH; offset++) {
    sum += powerAt(offset);
    moment += offset * powerAt(offset);
  }
  return Math.round(moment / sum);
}

function linesAround(
  centreHz: number,
  fundamentalHz: number,
  powerAt: (offset: number) => number,
  noise: number,
): readonly RippleLine[] {
  const offsets = Array.from({ length: 2 * REACH + 1 }, (_, i) => i - REACH);
  const strongest = Math.max(...offsets.map(powerAt));
  return (
    offsets
      .filter((offset) => powerAt(offset) > PROMINENT * noise)
      // Under a hundredth of the strongest the window's own skirts begin.
      .filter((offset) => powerAt(offset) > 1e-4 * strongest)
      .map((offset) => ({
        offset,
        frequencyHz: centreHz + offset * fundamentalHz,
        rms: Math.sqrt(powerAt(offset)),
      }))
  );
}
