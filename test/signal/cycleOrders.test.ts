import { expect, test } from 'vitest';
import { cycleOrders } from '../../src/signal/cycleOrders.ts';
import { fitHarmonics } from '../../src/signal/fitHarmonics.ts';
import type { HarmonicFit } from '../../src/signal/harmonicFit.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';

/** A sine of 100 V whose fifth order grows from nothing along the record, fitted. */
function fitted(
  period: number,
  cycles: number,
  orders: number,
  grownV = 4,
  noise = 0,
  seed = 1,
): HarmonicFit {
  const count = Math.round(period * cycles);
  const normal = gaussianNumbers(randomNumbers(seed));
  const samples = Float64Array.from({ length: count }, (_, n) => {
    const x = (2 * Math.PI * n) / period;
    return 100 * Math.sin(x) + ((grownV * n) / count) * Math.sin(5 * x) + noise * normal();
  });
  return fitHarmonics(samples, {
    orders,
    omega: (2 * Math.PI) / period,
    frequencyKnown: true,
    folded: false,
  })!;
}

test('folded cells agree with sums over every sample', () => {
  for (const [period, cycles] of [
    [601.3, 4.4],
    [2000, 3],
  ] as const) {
    const fit = fitted(period, cycles, 20);
    const { cosine, sine, centres } = cycleOrders(fit)!;
    const length = Math.round(period);
    cosine.forEach((of, i) => {
      const from = Math.round(centres[i]! - (length - fit.residual.length) / 2);
      const left = fit.residual.stretch(from, from + length);
      for (const k of [1, 4, 5, 6, 20]) {
        let [c, s] = [0, 0];
        left.forEach((r, n) => {
          const x = k * fit.omega * (from + n - (fit.residual.length - 1) / 2);
          c += (2 * r * Math.cos(x)) / length;
          s += (2 * r * Math.sin(x)) / length;
        });
        // A bin of a 256th of a cycle holds two to eight samples, of phases within k·π/256: 0.25 of 4 V at worst.
        expect(Math.abs(of[k - 1]! - c)).toBeLessThan(0.02);
        expect(Math.abs(sine[i]![k - 1]! - s)).toBeLessThan(0.02);
      }
    });
  }
});

test('an order that grows from 0 to 4 V over four cycles: its cells run from −1.5 to 1.5 V about the fit', () => {
  const fit = fitted(200, 4, 20);
  const { cosine, sine, centres } = cycleOrders(fit)!;
  expect(centres).toEqual([-300, -100, 100, 300]);
  const sizes = cosine.map((c, i) => {
    const [fc, fs] = [fit.cosine[4]!, fit.sine[4]!];
    return (c[4]! * fc + sine[i]![4]! * fs) / Math.hypot(fc, fs);
  });
  // Means of a ramp over quarters; what the ramp puts beside the order moves them by some hundredths.
  [-1.5, -0.5, 0.5, 1.5].forEach((expected, i) => {
    expect(Math.abs(sizes[i]! - expected)).toBeLessThan(0.05);
  });
});

test('of white noise the scatter between cells, shared or not, tells the variance of the mean', () => {
  for (const cycles of [1.4, 2, 2.6, 5.5, 40.3]) {
    let ratio = 0;
    const runs = 60;
    for (let run = 0; run < runs; run++) {
      const fit = fitted(100, cycles, 8, 0, 1, 77 + run);
      const { cosine, sine, meanShare } = cycleOrders(fit)!;
      let square = 0;
      for (const k of [5, 6, 7]) {
        for (const part of [cosine, sine]) {
          const values = part.map((of) => of[k]!);
          const mean = values.reduce((sum, x) => sum + x / values.length, 0);
          square += values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1) / 6;
        }
      }
      ratio += (meanShare * square) / (2 / fit.count) / runs;
    }
    // The mean of 360 squares of one degree of freedom or more is known to 7 %; three times that.
    expect(ratio, `${cycles} cycles`).toBeGreaterThan(0.8);
    expect(ratio, `${cycles} cycles`).toBeLessThan(1.2);
  }
});

test('below 1.1 periods no two cells differ', () => {
  expect(cycleOrders(fitted(1000, 1.05, 3))).toBe(null);
});
