import { expect, test } from 'vitest';
import { supplyTimeline } from '../../../src/measure/steps/supplyTimeline.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';

/** Jumps of nearly half a turn; half a turn short, a track would go on three times as fast. */
const jumps = [
  { seed: 5009, perCycle: 79, start: 0.51, atCycle: 9.8, turns: 0.39 },
  { seed: 5085, perCycle: 116, start: 0.56, atCycle: 7.8, turns: 0.46 },
  { seed: 5096, perCycle: 72, start: 0.49, atCycle: 9.2, turns: -0.5 },
  { seed: 5140, perCycle: 91, start: 0.11, atCycle: 8.1, turns: 0.5 },
  { seed: 5251, perCycle: 118, start: 0.79, atCycle: 9.5, turns: -0.49 },
];

test('beyond a jump of phase every cycle has the RMS that it had before', () => {
  for (const { seed, perCycle, start, atCycle, turns } of jumps) {
    const normal = gaussianNumbers(randomNumbers(seed));
    const samples = Float64Array.from({ length: 19 * perCycle }, (_, n) => {
      const x = n / perCycle;
      const phase = 2 * Math.PI * (start + x + (x < atCycle ? 0 : turns));
      return 170 * (Math.sin(phase) + 0.01 * Math.sin(3 * phase)) + normal();
    });
    const { envelope } = supplyTimeline({ samples, intervalS: 1 / (60 * perCycle), startS: 0 })!;
    // Farther than three cycles from it; a zero beside a jump may be off by some hundredths of a cycle, its RMS by as much.
    const beyond = envelope.rms.filter((_, k) => Math.abs(envelope.timeS[k]! * 60 - atCycle) > 3);
    const farthest = Math.max(...beyond.map((rms) => Math.abs(rms / 120.2 - 1)));
    expect(farthest, `${turns} turns after ${atCycle} cycles`).toBeLessThan(0.05);
    expect(beyond.length).toBeGreaterThan(20);
  }
});
