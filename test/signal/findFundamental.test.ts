import { expect, test } from 'vitest';
import { findFundamental } from '../../src/signal/findFundamental.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { type ShapeName, waveNamed } from '../../src/synth/waveNamed.ts';

const random = randomNumbers(42);
const between = (low: number, high: number): number => low + (high - low) * random();

test('the period of every shape is found, from 1.3 cycles up, at any phase, with 1 % noise at 8 bits', () => {
  const shapes: ShapeName[] = [
    'sine',
    'modified',
    'square',
    'staircase',
    'clipped',
    'triangle',
    'halfwave',
    'ripple',
  ];
  for (const shape of shapes) {
    // Under a cycle and a half of these, plateau may lie over plateau, with no edge to tell the period by.
    const fewest = shape === 'square' || shape === 'halfwave' ? 1.62 : 1.32;
    for (let run = 0; run < 30; run++) {
      const cycles = run % 2 === 0 ? between(fewest, 4) : between(fewest, 25);
      const samplesPerCycle = Math.exp(between(Math.log(200), Math.log(2000)));
      const samples = sampleWave(waveNamed[shape]({ dutyRatio: between(0.3, 0.92) }), {
        frequencyHz: 1,
        sampleRateHz: samplesPerCycle,
        cycles,
        startPhaseCycles: random(),
        offset: between(-0.05, 0.05),
        noiseRms: 0.01,
        bits: 8,
        fullScale: 1.3,
        seed: run,
      });
      const found = findFundamental(samples);
      if ('none' in found) throw new Error(`${shape}, ${cycles} cycles: ${found.none}`);
      // Near enough for the full fit to start from: a quarter of a cycle over the record.
      expect(Math.abs(found.cycles - samples.length / samplesPerCycle)).toBeLessThan(0.25);
    }
  }
});

test('raw pulse-width modulation repeats with its fundamental, not with its carrier or every second cycle', () => {
  for (let run = 0; run < 20; run++) {
    const cycles = between(1.5, 12);
    const samples = sampleWave(
      waveNamed.pwm({ carrierRatio: run % 2 === 0 ? 21 : 39, modulationRatio: between(0.6, 1) }),
      {
        frequencyHz: 1,
        sampleRateHz: between(1500, 6000),
        cycles,
        startPhaseCycles: random(),
      },
    );
    const found = findFundamental(samples);
    if ('none' in found) throw new Error(`${cycles} cycles: ${found.none}`);
    expect(Math.abs(found.cycles / cycles - 1)).toBeLessThan(0.02);
  }
});

test('under 1.3 periods it is too short', () => {
  for (const cycles of [1.0, 1.1, 1.2, 1.28]) {
    for (const phase of [0, 0.13, 0.4, 0.77]) {
      const samples = sampleWave(waveNamed.sine({}), {
        frequencyHz: 50,
        sampleRateHz: 1e5,
        cycles,
        startPhaseCycles: phase,
      });
      const found = findFundamental(samples);
      expect('none' in found && ['too short', 'no period'].includes(found.none)).toBe(true);
    }
  }
});

test('what does not repeat has no fundamental', () => {
  const normal = gaussianNumbers(randomNumbers(5));
  const at = (f: (t: number) => number): Float64Array =>
    Float64Array.from({ length: 4000 }, (_, n) => f(n / 4000) + 0.01 * normal());
  let walk = 0;
  const records: Record<string, Float64Array> = {
    noise: at(() => normal()),
    ramp: at((t) => t),
    decay: at((t) => Math.exp(-5 * t)),
    step: at((t) => (t > 0.4 ? 1 : 0)),
    'single pulse': at((t) => (t > 0.4 && t < 0.45 ? 1 : 0)),
    'random walk': at(() => (walk += 0.02 * normal())),
  };
  for (const [name, record] of Object.entries(records)) {
    const found = findFundamental(record);
    expect({ name, none: 'none' in found }).toEqual({ name, none: true });
  }
  expect(findFundamental(new Float64Array(500).fill(12))).toEqual({ none: 'constant', cycles: null });
});

test('short pulses between long rests repeat, alone or on a direct voltage; bursts, pairs and single ones do not', () => {
  const normal = gaussianNumbers(randomNumbers(11));
  const record = (
    cycles: number,
    period: number,
    pulse: (phase: number, n: number) => number,
  ): Float64Array =>
    Float64Array.from({ length: Math.floor(cycles * period) }, (_, n) => {
      const phase = (n / period + 0.4) % 1;
      return 3 + pulse(phase, n) + 0.01 * normal();
    });
  for (let run = 0; run < 60; run++) {
    const [cycles, period, duty] = [between(3.1, 8), between(800, 3000), between(0.03, 0.06)];
    const found = findFundamental(record(cycles, period, (phase) => (phase < duty ? 1 : 0)));
    if ('none' in found) throw new Error(`${duty} of ${cycles} periods: ${found.none}`);
    expect(Math.abs(found.cycles - cycles)).toBeLessThan(0.02 * cycles);
  }
  const none: Record<string, Float64Array> = {
    // Each 4 % of a period long, of a height of its own: nothing is the same a period later.
    'unlike pulses': record(5, 1000, (phase, n) =>
      phase < 0.04 ? [1, -2, 0.4, 3, -1, 2][Math.round(n / 1000)]! : 0,
    ),
    'one pulse': record(5, 1000, (phase, n) => (phase < 0.04 && n > 2000 && n < 3000 ? 1 : 0)),
    'two pulses': record(5, 1000, (phase, n) => (phase < 0.04 && n < 2000 ? 1 : 0)),
    // The tone is the wave, and it is told by its own stretch.
    'tone in bursts': record(5, 1000, (phase) => (phase < 0.1 ? Math.sin(2 * Math.PI * 60 * phase) : 0)),
  };
  for (const [name, samples] of Object.entries(none)) {
    const found = findFundamental(samples);
    expect({ name, none: 'none' in found }).toEqual({ name, none: true });
  }
});

test('a wave of fewer than eight samples a period is too coarse', () => {
  const samples = Float64Array.from({ length: 400 }, (_, n) => Math.sin((2 * Math.PI * n) / 5.3));
  expect(findFundamental(samples)).toMatchObject({ none: 'too coarse' });
});
