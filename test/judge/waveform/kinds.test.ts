import { expect, test } from 'vitest';
import { classifyWave } from '../../../src/judge/waveform/classifyWave.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { reasonText } from '../../../src/words/reasons.ts';
import { inputOf } from '../../measure/inputOf.ts';
import { drawsAsked } from '../../samples.ts';

const DRAWS = drawsAsked(20);
const random = randomNumbers(9091);
const normal = gaussianNumbers(randomNumbers(9092));
const between = (low: number, high: number): number => low + (high - low) * random();
const sine = (phase: number): number => Math.sin(2 * Math.PI * phase);

/** A shape of height 1 as a scope of 8 to 12 bits saves it, 55 Hz. */
function captured(
  shape: (phase: number) => number,
  { perCycle = between(400, 4000), cycles = between(2.4, 8), noise = between(0, 0.006) } = {},
): ReturnType<typeof measureWave> {
  const step = between(2.2, 2.8) / 2 ** (8 + Math.floor(5 * random()));
  const start = random();
  const samples = Float64Array.from({ length: Math.round(perCycle * cycles) }, (_, n) => {
    const turned = start + n / perCycle;
    return step * Math.round((shape(turned - Math.floor(turned)) + noise * normal()) / step);
  });
  return measureWave(inputOf(samples, 55 * perCycle));
}

/** −1 … 1, once up and down a carrier period. */
const triangle = (turns: number): number => 1 - 4 * Math.abs(turns - Math.floor(turns) - 0.5);

test(`phase-cut sines are distorted sines that rest at zero and jump (${DRAWS} draws of SINEASSAY_DRAWS)`, () => {
  for (let run = 0; run < DRAWS; run++) {
    const cutDeg = between(30, 150);
    const isLeading = run % 2 === 0;
    const wave = captured((phase) => (phase % 0.5 < cutDeg / 360 === isLeading ? 0 : sine(phase)));
    const { kind, reasons } = classifyWave(wave);
    expect(kind).toBe('distorted sine');
    const [, rest, way, angle] =
      /^rests at zero for ([\d.]+) % of the time and jumps (on|off) at about ([\d.]+)°/.exec(
        reasonText(reasons[0]!),
      ) ?? [];
    expect(way).toBe(isLeading ? 'on' : 'off');
    // Near its crossing a sine is within 2 % of its height of zero for 1.3 % of the cycle on either side.
    expect(Math.abs(Number(angle) - cutDeg)).toBeLessThan(8);
    const truth = (100 * (isLeading ? cutDeg : 180 - cutDeg)) / 180;
    expect(Math.abs(Number(rest) - truth)).toBeLessThan(5);
    const { dwellPercent } = wave.figures;
    if (dwellPercent.value === null) throw new Error(JSON.stringify(dwellPercent.reason));
    expect(Math.abs(dwellPercent.value - truth)).toBeLessThan(5);
  }
}, 600_000);

test(`unfiltered modulation of two and three levels is not classified, and says how often it switches (${DRAWS} draws of SINEASSAY_DRAWS)`, () => {
  for (let run = 0; run < DRAWS; run++) {
    const ratio = between(9, 30);
    const depth = between(0.7, 0.95);
    const isTwo = run % 2 === 0;
    const shape = (phase: number): number => {
      const carrier = triangle(ratio * phase);
      const level = depth * sine(phase);
      if (isTwo) return level > carrier ? 1 : -1;
      return ((level > carrier ? 1 : -1) - (-level > carrier ? 1 : -1)) / 2;
    };
    const { kind, reasons } = classifyWave(captured(shape, { perCycle: between(2000, 5000) }));
    expect([kind, reasons[0]]).toEqual([
      'not classified',
      expect.stringMatching(
        new RegExp(`^switches [\\d.]+ times a cycle between ${isTwo ? 2 : 3} levels: pulse-width modulation`),
      ),
    ]);
  }
}, 600_000);

test(`staircases of 27 to 35 levels are stepped where samples and bits show them (${DRAWS} draws of SINEASSAY_DRAWS)`, () => {
  let found = 0;
  for (let run = 0; run < DRAWS; run++) {
    const height = 13 + Math.floor(5 * random());
    const wave = captured((phase) => Math.round(0.9999 * height * sine(phase)) / height, {
      perCycle: between(1500, 5000),
      noise: between(0, 0.003),
    });
    if (classifyWave(wave).kind === 'stepped') found++;
  }
  // A level's own noise of a tenth of the spacing begins to hide it.
  expect(found / DRAWS).toBeGreaterThan(0.85);
}, 600_000);

test('a staircase of 33 levels is stepped where few samples see each', () => {
  // Nearest levels, 16.49 of them to the peak; 325 V, noise of 0.07 V and of 0.23 V, twelve bits.
  for (const [levels, perCycle, cycles, noise] of [
    [33, 2453, 3.1, 0.07],
    [31, 671, 2.72, 0.23],
    [31, 2795, 3.61, 0.24],
  ] as const) {
    const height = (levels - 1) / 2;
    const step = (2 * 1.1 * 325) / 2 ** 12;
    const samples = Float64Array.from({ length: Math.round(perCycle * cycles) }, (_, n) => {
      const level = Math.round((height + 0.49) * sine(0.3 + n / perCycle)) / height;
      return step * Math.round((325 * level + noise * normal()) / step);
    });
    const { kind, levels: found } = classifyWave(measureWave(inputOf(samples, 50 * perCycle)));
    expect([kind, found]).toEqual(['stepped', levels]);
  }
});

test('a sine with one line beside it is no staircase, though its flanks rest', () => {
  // The slope of the fundamental is 1, that of 2 % at order 43 is 0.86, at order 50 it is 1.
  for (const [order, cycles, perCycle] of [
    [43, 2.37, 306],
    [50, 10.02, 334],
    [43, 5, 1000],
  ] as const) {
    const wave = captured((phase) => sine(phase) + 0.02 * Math.sin(2 * Math.PI * order * phase + 1), {
      perCycle,
      cycles,
      noise: 0.001,
    });
    expect(classifyWave(wave).kind).toBe('pure sine');
  }
});

test('a cut sine in few cycles is no square wave', () => {
  // Zero, then a piece of a sine: cut at 82° and 71° of its half cycles, under three cycles, starting anywhere.
  for (let run = 0; run < 40; run++) {
    const degrees = between(65, 115);
    const shape = (phase: number): number => ((phase % 0.5) * 360 < degrees ? sine(phase) : 0);
    const wave = captured(shape, { perCycle: between(800, 1900), cycles: between(2.7, 3), noise: 0.001 });
    expect(classifyWave(wave).kind).toBe('distorted sine');
  }
});

test('impulses with rest between them are no square wave', () => {
  const { kind, reasons } = classifyWave(
    captured((phase) => (phase < 0.08 ? 1 : 0), { perCycle: 2000, cycles: 5.2, noise: 0.003 }),
  );
  expect(kind).toBe('not classified');
  expect(reasonText(reasons[0]!)).toMatch(/^rests at one level for 9[12] % of the time, between impulses/);
});

test('bursts of pulses that repeat are no square wave, however exactly they do', () => {
  // Four pulses of half their spacing in the first six tenths of each period, then rest.
  const bursts = (phase: number): number => (phase < 0.6 && phase % 0.15 < 0.075 ? 3 : 0);
  const { kind, reasons } = classifyWave(captured(bursts, { perCycle: 397, cycles: 5.04, noise: 0.01 }));
  expect(kind).toBe('not classified');
  expect(reasonText(reasons[0]!)).toMatch(
    /^switches (8|8\.1|7\.9) times a cycle between 2 levels: pulses in bursts/,
  );
  const square = classifyWave(
    captured((phase) => (phase < 0.3 ? 3 : 0), { perCycle: 397, cycles: 1.6, noise: 0.01 }),
  );
  expect(square.kind).toBe('square');
});

test('a smooth wave has no time at zero, and says why', () => {
  expect(captured(sine).figures.dwellPercent).toEqual({
    value: null,
    reason: { code: 'wave.restsNot' },
  });
});

test('pairs of highest and lowest values are seen to be those of peak detection', () => {
  const codes = (samples: Float64Array): string[] =>
    measureWave(inputOf(samples, 50_000)).figures.notices.map(({ code }) => code);
  const plain = Float64Array.from({ length: 4000 }, (_, n) => sine(n / 900.3) + 0.01 * normal());
  const pairs = plain.map((value, n) => value + (n % 2 === 0 ? 0.02 : -0.02));
  expect(codes(pairs)).toContain('acquisition.pairs');
  expect(codes(plain)).not.toContain('acquisition.pairs');
  // At 200 samples a cycle a flank is steeper than the pair is high: within a pair the wave goes either way.
  const steep = Float64Array.from({ length: 1400 }, (_, n) => sine(n / 200.3) + 0.002 * normal());
  expect(codes(steep.map((value, n) => value + (n % 2 === 0 ? 0.008 : -0.008)))).toContain(
    'acquisition.pairs',
  );
  // Of a slow scope each value stands twice: neighbours are equal in pairs, and nothing zigzags.
  expect(codes(plain.map((_, n) => plain[n & ~1]!))).not.toContain('acquisition.pairs');
  // A clean sine rises for half a cycle and falls for the other.
  expect(codes(Float64Array.from({ length: 4000 }, (_, n) => sine(n / 900.3)))).not.toContain(
    'acquisition.pairs',
  );
});

test('pulses without noise on the very codes of their levels are no sine on few codes', () => {
  // Twenty times as far apart as a digitiser's codes would be seen: two or three values are all that occurs.
  for (const [ratio, isTwo] of [
    [40, true],
    [27, false],
    [32, false],
  ] as const) {
    const shape = (phase: number): number => {
      const [carrier, level] = [triangle(ratio * phase), 0.85 * sine(phase)];
      if (isTwo) return level > carrier ? 1 : -1;
      return ((level > carrier ? 1 : -1) - (-level > carrier ? 1 : -1)) / 2;
    };
    const samples = Float64Array.from({ length: 7200 }, (_, n) => 350 * shape((n / 1800 + 0.13) % 1));
    expect(new Set(samples).size).toBe(isTwo ? 2 : 3);
    const { kind, reasons } = classifyWave(measureWave(inputOf(samples, 90_000)));
    expect([kind, reasons[0]]).toEqual(['not classified', expect.stringMatching(/^switches .* pulse-width/)]);
  }
});

test('a cut sine whose noise parts its flanks into levels is no staircase: at its outermost it rests nowhere', () => {
  for (let run = 0; run < 40; run++) {
    const cutDeg = 52;
    const cut = (phase: number): number => (phase % 0.5 < cutDeg / 360 ? sine(phase) : 0);
    const noisy = captured(cut, { perCycle: 480, cycles: 6.84, noise: 0.0071 });
    expect(classifyWave(noisy).kind).toBe('distorted sine');
  }
});
