import { sin } from '../../base/elementary/sin.ts';
import type { MeasuredWave } from '../../figures/measuredWave.ts';
import type { Trace } from '../assay.ts';

/**
 * Two cycles of a measured wave over the sine of the same AC RMS and phase, from the first rising zero of
 * the fundamental that leaves room for them.
 *
 * @remarks DC and noise have no cycle: then it is the whole record over its mean.
 */
export function traceOf(wave: MeasuredWave, unit: 'V' | 'A'): Trace {
  const { samples, startS, intervalS, periodic, figures } = wave;
  const mean = figures.mean.value ?? 0;
  const acRms = figures.acRms.value ?? 0;
  if (periodic === null) {
    const whole = cut(samples, 0, samples.length, (n) => ({ timeS: n * intervalS, ideal: mean }));
    return { ...whole, zeroS: startS, unit };
  }
  const { fit, phaseRad, periodSamples } = periodic;
  const phaseAt = (n: number): number => fit.omega * (n - (samples.length - 1) / 2) + phaseRad;
  const risingZero = (-phaseAt(0) / (2 * Math.PI)) * periodSamples;
  const firstZero = risingZero - Math.floor(risingZero / periodSamples) * periodSamples;
  const shown = Math.min(samples.length, Math.ceil(2 * periodSamples) + 1);
  const from = Math.min(Math.ceil(firstZero), samples.length - shown);
  const cycles = cut(samples, from, from + shown, (n) => ({
    timeS: (n - firstZero) * intervalS,
    ideal: mean + Math.SQRT2 * acRms * sin(phaseAt(n)),
  }));
  return { ...cycles, zeroS: startS + firstZero * intervalS, unit };
}

function cut(
  samples: Float64Array,
  from: number,
  to: number,
  at: (n: number) => { timeS: number; ideal: number },
): Omit<Trace, 'zeroS' | 'unit'> {
  const wave = samples.slice(from, to);
  const timeS = new Float64Array(wave.length);
  const ideal = new Float64Array(wave.length);
  for (let n = from; n < to; n++) {
    const point = at(n);
    timeS[n - from] = point.timeS;
    ideal[n - from] = point.ideal;
  }
  return { timeS, wave, ideal, residual: wave.map((v, i) => v - ideal[i]!) };
}
