import { blockMeans } from '../blockMeans.ts';
import { findFundamental } from '../findFundamental.ts';
import { LONG_RECORD } from '../longRecord.ts';
import { type LitStretch, litStretches } from './litStretches.ts';

/** Enough for 250 cycles of 80 samples; a longer stretch is averaged down to it for this look. */
const LOOK_LENGTH = 20_000;
/** Of a long record a shorter look is enough, as it may be looked at in shorter stretches. */
const LONG_LOOK_LENGTH = 8192;
/** The shortest stretch looked at is a thirty-second of the record. */
const HALVINGS = 5;
/** Stretches looked at of one length. */
const LOOKS = 4;

/** Cycles that make a supply of what swings to one side only, as half a wave does. */
const ONE_SIDED_CYCLES = 5;
/** Periods that a rest takes where one-sided pulses beside it are waves of their own. */
const RESTS = 3;

/** Stretches with voltage that are looked at, the longest first. */
const STRETCHES = 4;

/**
 * The fundamental of a record that may change on its way: of the longest stretch with voltage where it rests at zero
 * for long; else of the whole where it repeats throughout, else of a half, quarter and so on that repeats.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns radians a sample, good to a few per cent anywhere in the record; null where nothing repeats.
 */
export function roughFundamental(samples: Float64Array): number | null {
  const lit = litStretches(samples);
  // Bursts may come back as regularly as their wave does.
  return ofStretches(samples, lit, true) ?? ofParts(samples) ?? ofStretches(samples, lit, false);
}

/** @param isSure - whether only what can't be a part of something slower that repeats is taken. */
function ofStretches(
  samples: Float64Array,
  stretches: readonly LitStretch[],
  isSure: boolean,
): number | null {
  for (const { from, to, isBalanced, restSamples } of stretches.slice(0, STRETCHES)) {
    const blockLength = Math.max(1, Math.floor((to - from) / LOOK_LENGTH));
    const stretch = blockMeans(samples.subarray(from, to), blockLength);
    const found = findFundamental(stretch);
    if ('none' in found) continue;
    const omega = found.omega / blockLength;
    if (isBalanced) return omega;
    // A few pulses to one side are a signal's, or half of a switched cycle, which rests for a few of them at most.
    const rests = (restSamples * omega) / (2 * Math.PI);
    if (found.cycles >= ONE_SIDED_CYCLES && (!isSure || rests > RESTS)) return omega;
  }
  return null;
}

function ofParts(samples: Float64Array): number | null {
  const isLong = samples.length >= LONG_RECORD;
  const [lookLength, most] = isLong ? [LONG_LOOK_LENGTH, HALVINGS + 1] : [LOOK_LENGTH, HALVINGS];
  for (let halvings = 0; halvings <= most; halvings++) {
    const parts = 2 ** halvings;
    const length = Math.floor(samples.length / parts);
    const blockLength = Math.max(1, Math.floor(length / lookLength));
    const stride = Math.max(1, parts / LOOKS);
    for (let part = 0; part < parts && length >= 16; part += stride) {
      const stretch = blockMeans(samples.subarray(part * length, (part + 1) * length), blockLength);
      if (stretch.every(Number.isNaN)) continue;
      const found = findFundamental(stretch, undefined, isLong);
      if ('omega' in found) return found.omega / blockLength;
    }
  }
  return null;
}
