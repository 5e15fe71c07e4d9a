import { sin } from '../base/elementary.ts';
import { type KnownWave, switchedKind } from './knownWave.ts';
import { polylineWave, type Vertex } from './polylineWave.ts';

/**
 * Two-level (bipolar) sinusoidal pulse-width modulation with natural sampling: +1 while the reference
 * ma · sin(2πx) lies above a triangular carrier of peak 1, −1 while below.
 *
 * @param carrierRatio - mf, carrier over fundamental frequency: whole and odd, so that the wave has
 * half-wave symmetry. The carrier falls through zero at phase 0.
 * @param modulationRatio - ma, above 0, at most 1.
 * @remarks Each edge is solved for to the last bit, so the truth is exact for this mf too, not only in
 * the limit of large mf.
 * @see N. Mohan, T. Undeland, W. Robbins, Power Electronics, 3rd ed., Wiley 2003, section 8-2
 */
export function sinusoidalPwm(carrierRatio: number, modulationRatio: number): KnownWave {
  if (!(Number.isInteger(carrierRatio) && carrierRatio >= 3 && carrierRatio % 2 === 1)) {
    throw new RangeError(`the carrier ratio must be odd and at least 3, not ${carrierRatio}`);
  }
  if (!(modulationRatio > 0 && modulationRatio <= 1)) {
    throw new RangeError(`the modulation ratio must lie above 0 and up to 1, not ${modulationRatio}`);
  }
  const slopes = Array.from({ length: 2 * carrierRatio }, (_, slope) => {
    const phaseCycles = crossing(slope, carrierRatio, modulationRatio);
    const after = slope % 2 === 0 ? 1 : -1;
    return [
      { phaseCycles, value: -after },
      { phaseCycles, value: after },
    ];
  });
  return polylineWave(switchedKind('square', 2 * carrierRatio), slopes.flat() as [Vertex, ...Vertex[]]);
}

/** Where the reference meets the carrier's slope number `slope`, by bisection; even slopes fall. */
function crossing(slope: number, carrierRatio: number, modulationRatio: number): number {
  const middle = slope / (2 * carrierRatio);
  const falling = slope % 2 === 0 ? 1 : -1;
  let low = middle - 1 / (4 * carrierRatio);
  let high = middle + 1 / (4 * carrierRatio);
  for (let step = 0; step < 60; step++) {
    const phase = (low + high) / 2;
    const carrier = -falling * 4 * carrierRatio * (phase - middle);
    const above = modulationRatio * sin(2 * Math.PI * phase) > carrier;
    if (above === falling > 0) high = phase;
    else low = phase;
  }
  return (low + high) / 2;
}
