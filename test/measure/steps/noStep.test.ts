import { expect, test } from 'vitest';
import { type SupplyCourse, supplyTimeline } from '../../../src/measure/steps/supplyTimeline.ts';
import { randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { waveOfRms } from '../../../src/synth/changedWaves.ts';
import { type Course, evolvingWave } from '../../../src/synth/evolvingWave.ts';
import { waveNamed } from '../../../src/synth/waveNamed.ts';
import { draws } from '../../samples.ts';
import { EIGHT_BITS, recorded } from '../recorded.ts';

/** A course from its values; the integral only where the frequency needs it. */
const values = (at: (timeS: number) => number, primitive: (timeS: number) => number = at): Course => ({
  at,
  integral: (fromS, toS) => primitive(toS) - primitive(fromS),
});

// What moves the voltage without being a step: sizes as a tired battery, a scope and a flickering grid have them.
const RESTLESS = {
  'an 8 % linear sag': (durationS: number) => ({ amplitude: values((t) => 1 - (0.08 * t) / durationS) }),
  'noise of 2 %': () => ({ noiseRms: 0.02 * 230 }),
  'flicker of 1 %, sinusoidal, 8.8 Hz': () => ({
    amplitude: values((t) => 1 + 0.005 * Math.sin(2 * Math.PI * 8.8 * t)),
  }),
  'flicker of ±1 %, 3 Hz': () => ({ amplitude: values((t) => 1 + 0.01 * Math.sin(2 * Math.PI * 3 * t)) }),
  'a frequency that drifts by 0.3 Hz': (durationS: number) => ({
    drift: (t: number) => (0.3 * t) / durationS,
    driftPrimitive: (t: number) => (0.15 * t * t) / durationS,
  }),
} as const;

test.each(Object.entries(RESTLESS))('no step on 40 records with %s', (_, restless) => {
  const random = randomNumbers(5);
  for (let run = 0; run < draws(40, 4); run++) {
    const shape = (['sine', 'harmonics', 'modified', 'staircase'] as const)[run % 4]!;
    const nominalHz = run % 8 < 4 ? 50 : 60;
    // Five seconds now and then; the sag is steepest in the short ones.
    const durationS = run % 10 === 0 ? 5 : 0.3 + 0.9 * random();
    const { amplitude, noiseRms, drift, driftPrimitive } = {
      ...{ amplitude: undefined, noiseRms: undefined, drift: undefined, driftPrimitive: undefined },
      ...restless(durationS),
    };
    const wave = evolvingWave({
      wave: waveOfRms(waveNamed[shape]({ edgeCycles: 0.01 }), 230),
      frequencyHz: values(
        (t) => nominalHz + (drift?.(t) ?? 0),
        (t) => nominalHz * t + (driftPrimitive?.(t) ?? 0),
      ),
      ...(amplitude !== undefined && { amplitude }),
      phaseCycles: random(),
    });
    const sampling = { sampleRateHz: run % 5 === 0 ? 25_000 : 10_000, durationS, seed: run };
    const record = recorded(wave, {
      ...sampling,
      ...EIGHT_BITS,
      ...(noiseRms !== undefined && { noiseRms }),
    });
    const course = supplyTimeline(record, { nominal: 230 })!;
    expect(course.steps).toEqual([]);
    expect(course.events).toEqual([]);
  }
});

test('the steady stretch of a sagging record is the part that stays within 2 %', () => {
  const wave = evolvingWave({
    wave: waveOfRms(waveNamed.sine({}), 230),
    frequencyHz: 50,
    amplitude: values((t) => 1 - 0.08 * t),
  });
  const record = recorded(wave, { sampleRateHz: 10_000, durationS: 1, ...EIGHT_BITS });
  const { steady } = supplyTimeline(record, { nominal: 230 })!;
  // 2 % of 8 % over one second is a quarter of it; noise of some 0.03 % and a cycle at each end.
  expect(steady.whole).toBe(false);
  expect(Math.abs((steady.to - steady.from) / 2500 - 1)).toBeLessThan(0.2);
});

test('a steady record is steady as a whole, to its last sample', () => {
  const wave = evolvingWave({ wave: waveOfRms(waveNamed.sine({}), 230), frequencyHz: 50 });
  const record = recorded(wave, { sampleRateHz: 10_000, durationS: 0.313, ...EIGHT_BITS });
  expect(supplyTimeline(record, { nominal: 230 })!.steady).toEqual({
    from: 0,
    to: 3130,
    whole: true,
    byCurrent: false,
  });
});

test('two cycles, noise, a direct voltage and silence have no steps, and say so without failing', () => {
  const short = evolvingWave({ wave: waveOfRms(waveNamed.sine({}), 230), frequencyHz: 50 });
  expect(supplyTimeline(recorded(short, { sampleRateHz: 10_000, durationS: 0.04 }))?.steps).toEqual([]);
  for (const sampling of [{ noiseRms: 1 }, {}]) {
    const nothing = evolvingWave({ wave: waveNamed.dc({}), frequencyHz: 50 });
    expect(supplyTimeline(recorded(nothing, { sampleRateHz: 10_000, durationS: 0.5, ...sampling }))).toBe(
      null,
    );
  }
});

/** 230 V at 50 Hz, 20 kS/s, that goes on so many turns ahead from 0.2137 s on; half volts. */
function jumping(turns: number, lastsS = 0): SupplyCourse {
  const samples = Float64Array.from({ length: 9000 }, (_, n) => {
    const t = n / 20_000;
    const at = (phase: number): number => 325 * Math.sin(2 * Math.PI * (50 * t + phase));
    const residual = 325 * Math.sin(2 * Math.PI * 50 * 0.2137) * Math.exp(-(t - 0.2137) / 0.003);
    const v = t < 0.2137 ? at(0) : t < 0.2137 + lastsS ? residual : at(turns);
    return 0.5 * Math.round(2 * v);
  });
  return supplyTimeline({ samples, intervalS: 1 / 20_000, startS: 0 }, { nominal: 230 })!;
}

test.each([29, 92, 150, -63, -120])(
  'a wave that goes on %s° on is no load step but a jump of phase',
  (degrees) => {
    const { steps, events, jumps, excursions } = jumping(degrees / 360);
    expect([steps, events, excursions]).toEqual([[], [], []]);
    const [jump] = jumps;
    expect(Math.abs(jump!.degrees.value! - degrees)).toBeLessThan(2);
    expect(Math.abs(jump!.atS.value - 0.2137)).toBeLessThanOrEqual(jump!.atS.uncertainty);
  },
);

test('a voltage that dies out and comes back is away, though it never rests at zero', () => {
  const { steps, events } = jumping(0.37, 0.0054);
  expect(steps).toEqual([]);
  const [away] = events;
  if (away?.kind !== 'transfer') throw new Error('no transfer');
  expect(Math.abs(away.durationS.value - 0.0054)).toBeLessThan(0.001);
});

test('a cut sine without noise whose jumps all slip by a sample at once has no step', () => {
  // Half a cycle of nearly a whole number of samples, and a quarter: edges stand still for cycles, then all move on.
  for (const periodSamples of [523.5, 527.9, 530.02, 331.4]) {
    for (const degrees of [90, 126, 127, 129]) {
      for (const start of [0, 0.21, 0.37]) {
        const samples = Float64Array.from({ length: Math.round(10.3 * periodSamples) }, (_, n) => {
          const phase = start + n / periodSamples;
          return (phase % 0.5) * 360 >= degrees ? 325 * Math.sin(2 * Math.PI * phase) : 0;
        });
        const course = supplyTimeline({ samples, intervalS: 1 / (50 * periodSamples), startS: 0 })!;
        expect(course.steps, `${degrees}°, ${periodSamples} samples a cycle, from ${start}`).toEqual([]);
        expect(course.events).toEqual([]);
      }
    }
  }
});

test.each([11, 22, 43])(
  'a ripple folded down to %d Hz makes no step in a record of five cycles',
  (rippleHz) => {
    for (let run = 0; run < 12; run++) {
      const phase = run / 12;
      const samples = Float64Array.from({ length: 1700 }, (_, n) => {
        const t = n / 20_000;
        const ripple = 0.015 * Math.sin(2 * Math.PI * (rippleHz * t + phase));
        return Math.SQRT2 * 230 * (Math.sin(2 * Math.PI * (60 * t + 3 * phase)) + ripple);
      });
      const course = supplyTimeline({ samples, startS: 0, intervalS: 1 / 20_000 }, { nominal: 230 })!;
      expect(course.steps, `phase ${phase}`).toEqual([]);
    }
  },
);

test('a step that has not come to a level when the record ends is one: the voltage ahead of it stands still', () => {
  const samples = Float64Array.from({ length: 4000 }, (_, n) => {
    const t = n / 20_000;
    const gain = t < 0.15 ? 1 : 1 - 0.03 * Math.exp((0.15 - t) / 0.05);
    return Math.SQRT2 * 230 * gain * Math.sin(2 * Math.PI * 60 * t);
  });
  const { steps } = supplyTimeline({ samples, startS: 0, intervalS: 1 / 20_000 }, { nominal: 230 })!;
  expect(steps.map(({ direction }) => direction)).toEqual(['on']);
});
