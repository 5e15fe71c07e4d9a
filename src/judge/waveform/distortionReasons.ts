import { rounded } from '../../base/amountText.ts';
import type { PeriodicWave } from '../../measure/measuredWave.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';

/** What makes a smooth wave differ from a sine, in words, most telling first. */
export function distortionReasons(figures: WaveFigures, periodic: PeriodicWave): string[] {
  const { cycle } = periodic;
  const peak = Math.max(...cycle);
  const trough = Math.min(...cycle);
  const height = peak - trough;
  const near = (level: number): number =>
    cycle.filter((v) => Math.abs(v - level) < 0.02 * height).length / cycle.length;
  const reasons: string[] = [];
  const crest = figures.crestFactor.value;
  // A sine is within 2 % of its height of its peak for 9 % of the cycle; a flat top stays longer.
  const [atTop, atBottom] = [near(peak), near(trough)];
  const cut = cutReason(cycle, peak, trough);
  if (cut !== null) reasons.push(cut);
  else if (isHalfWave(cycle, peak, trough)) reasons.push('half-wave: one half of each cycle is missing');
  else if (atTop > 0.14 || atBottom > 0.14) {
    const where =
      atTop > 0.14 && atBottom > 0.14
        ? 'both tops are'
        : atTop > atBottom
          ? 'the upper top is'
          : 'the lower top is';
    reasons.push(
      `clipped: ${where} flat, ${rounded(100 * Math.max(atTop, atBottom), 2)} % of the cycle each`,
    );
  } else if (crest !== null && crest < 1.35)
    reasons.push(`flat-topped: crest factor ${crest.toFixed(2)}, a sine has 1.41`);
  if (isTriangular(figures))
    reasons.push('triangular: straight flanks, odd harmonics that fall with the square of their order');
  else if (crest !== null && crest > 1.49 && reasons.length === 0) {
    reasons.push(`peaked: crest factor ${crest.toFixed(2)}, a sine has 1.41`);
  }
  const strongest = figures.harmonics
    .filter(({ order, percent }) => order > 1 && percent >= 1)
    .sort((a, b) => b.percent - a.percent)
    .slice(0, 3)
    .map(({ order, percent }) => `${order} (${rounded(percent, 2)} %)`);
  if (strongest.length > 0) reasons.push(`strongest harmonics: ${strongest.join(', ')}`);
  return reasons;
}

/** Of the height, within which the wave rests at zero. */
const AT_ZERO = 0.02;
/** Of the height, that a sine doesn't change by in eight of 1024 points: there it goes 2.5 %. */
const JUMP = 0.12;

/**
 * Rests at zero and jumps there: a sine switched on or off within each half cycle, as a dimmer does it. The angle is
 * that at which it is switched, of 180° a half cycle.
 */
function cutReason(cycle: Float64Array, peak: number, trough: number): string | null {
  const height = peak - trough;
  if (!(peak > 0 && trough < 0)) return null;
  const rests = (i: number): boolean => Math.abs(cycle.at(i % cycle.length)!) < AT_ZERO * height;
  const resting = cycle.filter((_, i) => rests(i)).length / cycle.length;
  if (resting < 0.1 || resting > 0.95) return null;
  const near = Math.ceil(cycle.length / 128);
  const size = (i: number): number => Math.abs(cycle[(i + cycle.length) % cycle.length]!);
  let [on, off] = [0, 0];
  for (let i = 0; i < cycle.length; i++) {
    if (rests(i)) on = Math.max(on, size(i + near));
    if (rests(i + near)) off = Math.max(off, size(i));
  }
  if (Math.max(on, off) < JUMP * height) return null;
  const angle = 180 * (on > off ? resting : 1 - resting);
  return `rests at zero for ${rounded(100 * resting, 2)} % of the time and jumps ${on > off ? 'on' : 'off'} at about ${rounded(angle, 2)}° of each half cycle, as a dimmer-like switch cuts a sine`;
}

/** Rests at one extreme for over a third of the cycle, and nowhere near the other. */
function isHalfWave(cycle: Float64Array, peak: number, trough: number): boolean {
  const height = peak - trough;
  const resting = (level: number): number =>
    cycle.filter((v) => Math.abs(v - level) < 0.05 * height).length / cycle.length;
  const [top, bottom] = [resting(peak), resting(trough)];
  return Math.max(top, bottom) > 0.35 && Math.min(top, bottom) < 0.25;
}

/** Third and fifth harmonics of a triangle: 1/9 and 1/25 of the fundamental, crest factor √3. */
function isTriangular({ harmonics, crestFactor }: WaveFigures): boolean {
  const third = harmonics[2]?.percent ?? 0;
  const fifth = harmonics[4]?.percent ?? 0;
  const crest = crestFactor.value ?? 0;
  return Math.abs(third - 100 / 9) < 2 && Math.abs(fifth - 4) < 1.5 && crest > 1.6 && crest < 1.8;
}
