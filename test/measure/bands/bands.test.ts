import { expect, test } from 'vitest';
import { bandsOf } from '../../../src/measure/bands/findRipple.ts';
import { type HighBands, highBands } from '../../../src/measure/bands/highBands.ts';
import type { HarmonicFit } from '../../../src/signal/harmonicFit.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { fitAt, type Tone, toneSum } from '../groups/toneSum.ts';

function bandsIn(fit: HarmonicFit, rate: number): HighBands {
  return highBands({ intervalS: 1 / rate, fit, nominalFrequencyHz: null, smooth: true, acquisition: null })!;
}

const rmsAt = ({ bands }: HighBands, centreHz: number): number =>
  bands.find((band) => Math.abs(band.centreHz - centreHz) < 1)!.rms;

test('lines of 1 V at 2010, 2 V at 2200 and 0.5 V at 2210 Hz: √5 V in the band of 2100 Hz, 0.5 V in that of 2300', () => {
  for (const [f0, rate] of [
    [50, 20_000],
    [60, 30_000],
  ] as const) {
    const tones: Tone[] = [
      [f0, 230],
      [3 * f0, 9, 1],
      [2010, 1, 2],
      [2200, 2, 3],
      [2210, 0.5, 4],
    ];
    const high = bandsIn(fitAt(toneSum(tones, rate, rate), f0, rate), rate);
    expect(high.windows).toBe(5);
    // Rounding of the fit and of the transform, 1e-9 of 230 V.
    expect(Math.abs(rmsAt(high, 2100) - Math.sqrt(5))).toBeLessThan(3e-7);
    expect(Math.abs(rmsAt(high, 2300) - 0.5)).toBeLessThan(3e-7);
    expect(rmsAt(high, 2500)).toBeLessThan(3e-7);
    expect(Math.abs(high.rms - Math.sqrt(5.25))).toBeLessThan(3e-7);
  }
});

test('harmonics below 2 kHz leave nothing above, in windows that are no whole number of samples', () => {
  const [f0, rate] = [50.037, 22_050];
  const tones: Tone[] = Array.from({ length: 39 }, (_, i) => [(i + 1) * f0, 230 / (i + 1), i]);
  const high = bandsIn(fitAt(toneSum(tones, rate, 10_000), f0, rate), rate);
  expect(high.rms).toBeLessThan(1e-6);
});

test('Parseval: the bands add up to the mean square of all that lies above 2 kHz', () => {
  // Every line from 2005 Hz to half the sample rate, of random size and phase: 5 Hz apart in 200 ms.
  const [rate, count] = [24_000, 4800];
  const uniform = randomNumbers(12);
  const tones: Tone[] = Array.from({ length: 1998 }, (_, i) => [2005 + 5 * i, uniform(), 6 * uniform()]);
  const high = toneSum(tones, rate, count);
  const meanSquare = high.reduce((sum, x) => sum + (x * x) / count, 0);
  const wave = toneSum(
    [
      [50, 230],
      [250, 10],
    ],
    rate,
    count,
  );
  const result = bandsIn(
    fitAt(
      wave.map((x, n) => x + high[n]!),
      50,
      rate,
    ),
    rate,
  );
  // Rounding: 1e-9 of 230 V beside 26 V.
  expect(Math.abs(result.rms / Math.sqrt(meanSquare) - 1)).toBeLessThan(1e-7);
  // 35 narrow bands to 9 kHz, one wide one to 11, one cut at half the sample rate.
  expect(result.bands.length).toBe(37);
  expect(result.bands.at(-1)!.widthHz).toBe(1000);
  expect(result.bands.at(-1)!.centreHz).toBe(11_500);
});

test('a tone in a band reads its RMS there, on a line or between two, beside the harmonics', () => {
  for (const hertz of [4100, 4102.5, 5317.3]) {
    const samples = toneSum(
      [
        [50.02, 230],
        [hertz, 3, 1],
      ],
      40_000,
      40_000,
    );
    const high = bandsIn(fitAt(samples, 50.02, 40_000), 40_000);
    // Half-way between two lines 1 % of its power lies more than 20 lines away; 5317 Hz is 17 Hz off its band's middle.
    expect(Math.abs(rmsAt(high, 200 * Math.floor(hertz / 200) + 100) / 3 - 1)).toBeLessThan(0.006);
    expect(Math.abs(high.rms / 3 - 1)).toBeLessThan(0.002);
  }
});

test('a record under ten cycles is read with its own line spacing; fast ones end at 151 kHz', () => {
  const samples = toneSum(
    [
      [50, 230],
      [30_100, 2, 1],
    ],
    500_000,
    31_000,
  );
  const high = bandsIn(fitAt(samples, 50, 500_000, 20), 500_000);
  expect(high.windowCycles).toBe(3);
  expect(Math.abs(high.lineSpacingHz - 50 / 3)).toBeLessThan(1e-9);
  const last = high.bands.at(-1)!;
  expect([last.centreHz, last.widthHz]).toEqual([150_000, 2000]);
  expect(Math.abs(rmsAt(high, 30_000) - 2)).toBeLessThan(1e-6);
});

test('no room above 2 kHz, or less than a cycle: nothing', () => {
  const nothing = { nominalFrequencyHz: null, smooth: true, acquisition: null };
  const slow = fitAt(toneSum([[50, 230]], 4000, 800), 50, 4000, 20);
  expect(highBands({ intervalS: 1 / 4000, fit: slow, ...nothing })).toBe(null);
  const part = fitAt(toneSum([[50, 230]], 10_000, 190), 50, 10_000, 2);
  expect(highBands({ intervalS: 1e-4, fit: part, ...nothing })).toBe(null);
});

test('bandsOf(squares, lineHz, halfRateHz): a line on an edge belongs below, even where rounding moved it', () => {
  for (const lineHz of [5 - 1e-9, 5, 5 + 1e-9]) {
    const squares = new Float64Array(1900);
    squares[400] = 100;
    squares[440] = 4;
    squares[441] = 9;
    const [first, second] = bandsOf(squares, lineHz, 9400, 10);
    expect([first!.rms, second!.rms]).toEqual([2, 3]);
  }
});

test('bandsOf: where no line stands on an edge, the one nearest to it counts as on it; orders of single cycles stand where they stand', () => {
  // Lines of 12.1 Hz: the edge of 2200 Hz lies at 181.8 of them, so that a line there shows most in number 182.
  const squares = new Float64Array(800);
  squares[182] = 4;
  squares[183] = 1;
  const [below, above] = bandsOf(squares, 12.1, 9400, 5);
  expect([below!.rms, above!.rms]).toEqual([2, 1]);
  // Of a wave of 60 Hz in windows of one cycle each line is an order: 2220 Hz lies above 2200 Hz.
  const orders = new Float64Array(160);
  orders[36] = 9;
  orders[37] = 4;
  const [to2200, from2200] = bandsOf(orders, 60, 9400, 1);
  expect([to2200!.rms, from2200!.rms]).toEqual([3, 2]);
});

test('a line at 2200 Hz shows most in the band of 2100 Hz in short records too, wherever the fundamental lies', () => {
  for (const nominal of [50, 60]) {
    for (const off of [-0.008, -0.003, 0, 0.004, 0.009]) {
      for (const cycles of [2.3, 3, 3.4, 4.7, 5.2, 6.6, 8.1]) {
        const f0 = nominal * (1 + off);
        const rate = 25_000;
        // Fitted to orders below 2 kHz, so that none takes the line up.
        const fit = fitAt(
          toneSum(
            [
              [f0, 230],
              [2200, 2, 1],
            ],
            rate,
            Math.round((cycles * rate) / f0),
          ),
          f0,
          rate,
          30,
        );
        const high = bandsIn(fit, rate);
        expect(rmsAt(high, 2100), `${f0} Hz, ${cycles} cycles`).toBeGreaterThan(rmsAt(high, 2300));
      }
    }
  }
});

test('the RMS of all bands: a ripple of 6 V is no noise to it, and noise alone is in doubt as a whole', () => {
  const [f0, rate, count] = [50, 50_000, 3000];
  const normal = gaussianNumbers(randomNumbers(5));
  const noise = Float64Array.from({ length: count }, () => 0.5 * normal());
  const with6 = toneSum(
    [
      [f0, 230],
      [16_010, 6, 1],
    ],
    rate,
    count,
  ).map((x, n) => x + noise[n]!);
  const rippled = bandsIn(fitAt(with6, f0, rate), rate);
  // White noise of 0.5 V spreads to 25 kHz evenly; 2 to 25 kHz hold 0.92 of its power.
  const inBands = 0.5 ** 2 * (23 / 25);
  expect(Math.abs(rippled.rms - Math.sqrt(36 + inBands))).toBeLessThan(3 * rippled.rmsDeviation);
  // The mean line's power of 1380 lines from their median: within 10 %.
  expect(rippled.rmsOfNoise / (rippled.rms - 6)).toBeGreaterThan(0.5);
  expect(rippled.rmsOfNoise + rippled.rmsDeviation).toBeLessThan(0.06);
  const bare = bandsIn(
    fitAt(
      toneSum([[f0, 230]], rate, count).map((x, n) => x + noise[n]!),
      f0,
      rate,
    ),
    rate,
  );
  expect(Math.abs(bare.rms - Math.sqrt(inBands))).toBeLessThan(0.05);
  expect(bare.rmsOfNoise).toBeGreaterThan(0.6 * bare.rms);
});

test('a tone that shows in several lines of a short window is filed by its own frequency, on either side of an edge', () => {
  const rate = 25_000;
  for (const [f0, cycles] of [
    [60, 1],
    [60, 2],
    [50, 1],
    [50, 3],
  ] as const) {
    // Of the band of 2300 Hz: its last line in windows of 200 ms, its first, and one 10 Hz off that.
    for (const [hertz, centreHz] of [
      [2200, 2100],
      [2205, 2300],
      [2210, 2300],
      [2400, 2300],
    ] as const) {
      for (const turn of [0, 1, 2.5, 4]) {
        const count = Math.round(((cycles + 0.4) * rate) / f0);
        const tones: Tone[] = [
          [f0, 230],
          [hertz, 2, turn],
        ];
        const high = bandsIn(fitAt(toneSum(tones, rate, count), f0, rate, 30), rate);
        const others = high.bands.filter((band) => band.centreHz !== centreHz).map(({ rms }) => rms);
        // All but what the rectangle throws further than two lines, a tenth of its power at worst.
        expect(rmsAt(high, centreHz), `${hertz} Hz, ${f0} Hz`).toBeGreaterThan(2 * Math.max(...others));
      }
    }
  }
});
