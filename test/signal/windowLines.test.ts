import fc from 'fast-check';
import { expect, test } from 'vitest';
import { windowLines } from '../../src/signal/windowLines.ts';
import { fitAt, type Tone, toneSum } from '../measure/groups/toneSum.ts';

test('the fitted series is exact in windows that are no whole number of samples', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 45, max: 65, noNaN: true }),
      fc.double({ min: 7000, max: 20_000, noNaN: true }),
      (hertz, rate) => {
        const tones: Tone[] = [
          [hertz, 230],
          [3 * hertz, 10, 1],
          [49 * hertz, 0.5, 2],
        ];
        const samples = toneSum(tones, rate, Math.ceil((rate / hertz) * 25));
        const windows = windowLines(fitAt(samples, hertz, rate), { cycles: 10, count: 510 });
        expect(windows.length).toBe(2);
        for (const { squares } of windows) {
          squares.forEach((square, k) => {
            const truth = tones.find(([f]) => Math.round(f / hertz) * 10 === k)?.[1] ?? 0;
            // Rounding of a fit of 101 unknowns to 230 V.
            expect(Math.abs(Math.sqrt(square) - truth)).toBeLessThan(1e-9 * 230);
          });
        }
      },
    ),
    { numRuns: 20 },
  );
});

test('lines between the harmonics equal the integral over the window, in closed form', () => {
  // One sine at (k + d) lines, d no whole number: line m of its window is |D(k+d−m) e^… + D(−k−d−m) e^…| with
  // D(x) = sin(πx) / πx, the phase counted from the window's centre.
  const [hertz, rate, cycles] = [50.03, 10_000, 10];
  const length = (cycles * rate) / hertz;
  const at = 23.4;
  const phaseRad = 0.7;
  const samples = toneSum(
    [
      [hertz, 230],
      [(at * hertz) / cycles, 5, phaseRad],
    ],
    rate,
    Math.ceil(3.2 * length),
  );
  const windows = windowLines(fitAt(samples, hertz, rate, 20), { cycles, count: 60 });
  const dirichlet = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
  windows.forEach(({ squares }, index) => {
    // A sample's interval begins half a sample before it.
    const centre = (index + 0.5) * length - 0.5;
    const phase = (2 * Math.PI * at * centre) / length + phaseRad;
    for (let k = 13; k < 60; k++) {
      if (k % 10 === 0) continue;
      const [a, b] = [dirichlet(at - k), dirichlet(at + k)].map((d, i) => (i === 0 ? d : -d)) as [
        number,
        number,
      ];
      const expected = 5 * Math.hypot((a + b) * Math.cos(phase), (a - b) * Math.sin(phase));
      // (s + θr) / (2L): the sine changes by 0.52 V a sample, turns with the line by up to 0.19 rad of 7.1 V.
      expect(Math.abs(Math.sqrt(squares[k]!) - expected)).toBeLessThan((0.52 + 0.19 * 7.1) / (2 * length));
    }
  });
});

test('a record of exactly so many windows gives all of them, a sample less one fewer', () => {
  const samples = toneSum([[50, 1]], 10_000, 6000);
  expect(windowLines(fitAt(samples, 50, 10_000), { cycles: 10, count: 20 }).length).toBe(3);
  expect(windowLines(fitAt(samples.slice(1), 50, 10_000), { cycles: 10, count: 20 }).length).toBe(2);
  expect(windowLines(fitAt(samples, 50, 10_000), { cycles: 10, count: 20, windows: 1 }).length).toBe(1);
});

test('in a gap the fit stands in for what is missing', () => {
  const samples = toneSum(
    [
      [50, 230],
      [150, 8, 1],
    ],
    10_000,
    4000,
  );
  samples.fill(Number.NaN, 500, 560);
  const [first] = windowLines(fitAt(samples, 50, 10_000), { cycles: 10, count: 100 });
  expect(Math.abs(Math.sqrt(first!.squares[10]!) - 230)).toBeLessThan(1e-9 * 230);
  expect(Math.abs(Math.sqrt(first!.squares[30]!) - 8)).toBeLessThan(1e-9 * 230);
});
