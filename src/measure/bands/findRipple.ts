import { log2 } from '../../base/elementary.ts';
import { type HannPower, hannPower } from '../../signal/hannPower.ts';
import { middleStretch, type Residual } from '../../signal/residual.ts';
import { powerOfTwoAtLeast } from '../../signal/spectrum.ts';
import { median } from '../../signal/statistics.ts';
import { tonePlaces } from './tonePlaces.ts';

interface RippleInput {
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

/** What a band of frequencies holds. */
export interface HighBand {
  readonly centreHz: number;
  readonly widthHz: number;
  /** Of all lines above the band's lower edge, up to and with its upper edge; in U. */
  readonly rms: number;
}

/** Where the bands begin; below it there are harmonic orders. */
export const BANDS_FROM_HZ = 2000;
/** To here bands are 200 Hz wide, above it 2 kHz. */
const NARROW_TO_HZ = 9000;
/** Where the bands end: the 2 to 150 kHz of the standards, to the end of its last band. */
export const BANDS_TO_HZ = 151_000;

/**
 * Bands of 200 Hz from 2 to 9 kHz, centred on 2100, 2300, … 8900 Hz, then of 2 kHz from 9 to 151 kHz, each the
 * root of the sum of its lines' squares. The last is cut at half the sample rate.
 *
 * @param squares - squared RMS of line k at k·lineHz, in U².
 * @param cycles - of the window: of one cycle every line is a harmonic order, whose frequency is known.
 * @param halfRateHz - half the sample rate.
 * @returns ascending, without a hole; none where half the sample rate is below 2 kHz.
 * @remarks A line on an edge belongs to the band below: 2200 Hz to the one centred on 2100. Where no line stands on an
 * edge, what lies there shows most in the line nearest to it, so that this one counts as on it; a tone that shows in
 * several lines is filed by its own frequency (`tonePlaces`). Up to 9 kHz as in
 * annex B of the standard; which line spacing goes with which of its editions is not verified, so the lines are
 * the window's own. Above 9 kHz the width is ours.
 * @see IEC 61000-4-7:2002+A1:2008, annex B (from memory).
 */
export function bandsOf(
  squares: Float64Array,
  lineHz: number,
  halfRateHz: number,
  cycles: number,
): readonly HighBand[] {
  const bands: HighBand[] = [];
  const end = Math.min(BANDS_TO_HZ, halfRateHz);
  const places = tonePlaces(squares, lineHz);
  let first = firstAbove(BANDS_FROM_HZ / lineHz, cycles);
  for (let from = BANDS_FROM_HZ; from < end; ) {
    const to = Math.min(end, from + (from < NARROW_TO_HZ ? 200 : 2000));
    const next = to < halfRateHz ? firstAbove(to / lineHz, cycles) : squares.length;
    let sum = 0;
    const last = Math.min(next + TONE_REACH, squares.length);
    for (let k = Math.max(0, first - TONE_REACH); k < last; k++) {
      const hertz = places[k]!;
      const isInside = Number.isNaN(hertz)
        ? k >= first && k < next
        : hertz > from + ON_EDGE_HZ && (hertz <= to + ON_EDGE_HZ || to === end);
      if (isInside) sum += squares[k]!;
    }
    bands.push({ centreHz: (from + to) / 2, widthHz: to - from, rms: Math.sqrt(sum) });
    first = next;
    from = to;
  }
  return bands;
}

/** Lines that one tone shows in beside its place, at most. */
const TONE_REACH = 2;
/** Half a line of the standard's: a tone no further above an edge shows most in the line on it. */
const ON_EDGE_HZ = 2.5;

/** The first line beyond an edge that stands at `edge` lines; half-way between two, the upper is still on it. */
function firstAbove(edge: number, cycles: number): number {
  const nearest = Math.floor(edge + 0.5);
  // Rounding of the frequency moves an order by less than a hundredth of a spacing.
  const isOrderAbove = cycles === 1 && nearest > edge + 0.01;
  return isOrderAbove ? nearest : nearest + 1;
}

/** A line of the ripple. */
interface RippleLine {
  /** In multiples of the fundamental from the ripple's frequency: 0 the carrier, ±1, ±2 … its sidebands. */
  readonly offset: number;
  readonly frequencyHz: number;
  /** In U. */
  readonly rms: number;
}

/** What a switching converter leaves on its output. */
export interface Ripple {
  /** The middle of the cluster of lines, which is the carrier's own place even where the carrier is missing. */
  readonly frequencyHz: number;
  /** Half-width within which that frequency lies. */
  readonly frequencyWithinHz: number;
  /** Of carrier and sidebands together, noise taken off, in U. */
  readonly rms: number;
  /** Standard deviation that noise gives `rms`, in U. */
  readonly rmsDeviation: number;
  /** The lines that stand out, by offset; null where the record is too short to part them. */
  readonly lines: readonly RippleLine[] | null;
}
