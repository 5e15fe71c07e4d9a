import type { EvolvingWave } from '../../src/synth/evolvingWave.ts';

export interface TrueCycle {
  readonly timeS: number;
  readonly rms: number;
  readonly frequencyHz: number;
}

/**
 * Urms(1/2) of an evolving wave by its definition: between the true zeros of its phase, by quadrature of the
 * noise-free wave.
 */
export function trueHalfCycleRms(
  wave: EvolvingWave,
  startS: number,
  durationS: number,
): readonly TrueCycle[] {
  const endS = startS + durationS;
  const zeros: number[] = [];
  const first = Math.ceil(2 * wave.phaseCyclesAt(startS));
  for (let half = first; half <= 2 * wave.phaseCyclesAt(endS); half++) {
    let [low, high] = [startS, endS];
    // Halving sixty times leaves nothing of a second that a double could hold.
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (2 * wave.phaseCyclesAt(middle) < half) low = middle;
      else high = middle;
    }
    zeros.push(high);
  }
  return zeros.slice(2).map((to, i) => {
    const from = zeros[i]!;
    const steps = 2000;
    let sum = 0;
    for (let k = 0; k < steps; k++) sum += wave.at(from + ((k + 0.5) * (to - from)) / steps) ** 2;
    return { timeS: (from + to) / 2, rms: Math.sqrt(sum / steps), frequencyHz: 1 / (to - from) };
  });
}
