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

test.each([8, 15, 30, 60, 90, 120, 180, -45, -100])(
  'a jump of phase by %d° is found wherever it lies, and is no load',
  (degrees) => {
    const normal = gaussianNumbers(randomNumbers(9));
    for (const atS of [0.043, 0.0973, 0.1, 0.15]) {
      const samples = Float64Array.from({ length: 4000 }, (_, n) => {
        const t = n / 20_000;
        return 170 * Math.sin(2 * Math.PI * (60 * t + (t < atS ? 0 : degrees / 360))) + 0.5 * normal();
      });
      const course = supplyTimeline({ samples, intervalS: 1 / 20_000, startS: 0 }, { nominal: 120 })!;
      const [jump, ...more] = course.jumps;
      expect([more, course.steps, course.events], `at ${atS} s`).toEqual([[], [], []]);
      expect(Math.abs(jump!.atS.value - atS)).toBeLessThan(jump!.atS.uncertainty);
      // Half a turn is one way as well as the other. Twice the interval: it holds 95 of a hundred, and here are 36.
      const off = ((((jump!.degrees.value - degrees + 540) % 360) + 360) % 360) - 180;
      expect(Math.abs(off)).toBeLessThan(2 * jump!.degrees.uncertainty);
    }
  },
);
