import { expect, test } from 'vitest';
import { classifyWave } from '../../../src/judge/waveform/classifyWave.ts';
import type { WaveformKind } from '../../../src/judge/waveform/kinds.ts';
import { randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { offsetWave, scaledWave } from '../../../src/synth/changedWaves.ts';
import type { KnownWave } from '../../../src/synth/knownWave.ts';
import { waveNamed } from '../../../src/synth/waveNamed.ts';
import { reasonText } from '../../../src/words/reasons.ts';
import { measured } from '../../measure/inputOf.ts';
import { draws } from '../../samples.ts';

const random = randomNumbers(77);
const between = (low: number, high: number): number => low + (high - low) * random();

const shapes: [name: string, kind: WaveformKind, make: () => KnownWave][] = [
  ['sine', 'pure sine', () => waveNamed.sine({})],
  [
    'sine with 5 % ripple above order 50',
    'pure sine',
    () => waveNamed.ripple({ ripple: { order: between(60, 75), ratio: 0.05 } }),
  ],
  [
    'modified sine, ringing or not',
    'modified sine',
    () =>
      waveNamed.modified({
        dutyRatio: between(0.3, 0.92),
        edgeCycles: between(0, 0.01),
        tiltRatio: between(0, 0.12),
        ...(random() < 0.5
          ? {}
          : {
              ringing: {
                ratio: between(0.02, 0.2),
                order: between(15, 60),
                decayCycles: between(0.01, 0.05),
              },
            }),
      }),
  ],
  [
    'staircase of 5 to 17 levels',
    'stepped',
    () => waveNamed.staircase({ levels: 5 + 2 * Math.floor(between(0, 7)) }),
  ],
  [
    'square with tilt',
    'square',
    () => waveNamed.square({ tiltRatio: between(0, 0.12), edgeCycles: between(0, 0.01) }),
  ],
  ['clipped', 'distorted sine', () => waveNamed.clipped({ clipRatio: between(0.5, 0.85) })],
  ['triangle', 'distorted sine', () => waveNamed.triangle({})],
  ['half-wave', 'distorted sine', () => waveNamed.halfwave({})],
  [
    'harmonic-rich sine',
    'distorted sine',
    () =>
      waveNamed.harmonics({
        harmonics: [2, 3, 5, 7, 11].map((order) => ({
          order,
          ratio: between(0.05, 0.15),
          phaseRad: between(-3, 3),
        })),
      }),
  ],
];

test.each(shapes)('%s is told as %s at 8 bits with 1 % noise, any phase, offset to 5 %', (_, kind, make) => {
  for (let run = 0; run < draws(24, 3); run++) {
    const peak = 170;
    const cycles = run % 2 === 0 ? between(2.4, 4) : between(2.4, 12);
    const wave = measured(scaledWave(make(), peak), {
      frequencyHz: between(45, 65),
      sampleRateHz: Math.exp(between(Math.log(12e3), Math.log(60e3))),
      cycles,
      startPhaseCycles: random(),
      offset: between(-0.05, 0.05) * peak,
      noiseRms: 0.01 * peak,
      bits: 8,
      fullScale: 2 * peak,
      seed: run,
    });
    const found = classifyWave(wave);
    expect({ run, kind: found.kind, reasons: found.reasons }).toEqual({ run, kind, reasons: found.reasons });
  }
});

const told = (make: KnownWave, options = {}) =>
  classifyWave(
    measured(scaledWave(make, 170), {
      frequencyHz: 60,
      sampleRateHz: 50e3,
      cycles: 5.2,
      startPhaseCycles: 0.3,
      noiseRms: 0.8,
      bits: 8,
      fullScale: 300,
      ...options,
    }),
  );

test("a modified sine at half duty has a sine's crest factor and a square's distortion, and is told by its levels", () => {
  const { kind, levels, reasons } = told(waveNamed.modified({ dutyRatio: 0.5 }));
  expect(kind).toBe('modified sine');
  expect(levels).toBe(3);
  expect(reasons.slice(0, 3)).toEqual(['3 levels', 'at zero for 50 % of the time', 'THD 47 %']);
});

test('the reasons say what is wrong with a distorted sine', () => {
  expect(told(waveNamed.clipped({ clipRatio: 0.7 })).reasons[0]).toMatch(/^clipped: both tops are flat/);
  expect(told(waveNamed.triangle({})).reasons[0]).toMatch(/^triangular/);
  expect(told(waveNamed.halfwave({})).reasons[0]).toMatch(/^half-wave/);
  const rich = told(waveNamed.harmonics({ harmonics: [{ order: 5, ratio: 0.09, phaseRad: 1 }] }));
  expect(rich.reasons.join('; ')).toContain('strongest harmonics: 5 (9 %)');
});

test('switching ripple above order 50 leaves a sine pure, and its size and frequency are a reason', () => {
  const { kind, reasons } = told(waveNamed.ripple({ ripple: { order: 333.3, ratio: 0.05 } }), {
    sampleRateHz: 200e3,
  });
  expect(kind).toBe('pure sine');
  // 333.3 · 60 Hz
  expect(reasons.join('; ')).toMatch(/switching ripple of (4\.9|5|5\.1) % at 20 kHz/);
});

test('near the threshold it says "at the edge", and a stricter threshold changes the kind', () => {
  const harmonics = [{ order: 3, ratio: 0.0495, phaseRad: 1.5 }];
  expect(told(waveNamed.harmonics({ harmonics }))).toMatchObject({ kind: 'pure sine', atTheEdge: true });
  const wave = measured(waveNamed.harmonics({ harmonics }), {
    frequencyHz: 60,
    sampleRateHz: 50e3,
    cycles: 5.2,
  });
  expect(classifyWave(wave, 3)).toMatchObject({ kind: 'distorted sine', atTheEdge: false });
  expect(classifyWave(wave, 8)).toMatchObject({ kind: 'pure sine', atTheEdge: false });
});

test('DC, noise and DC with ripple are not classified, and the reason says why', () => {
  const reason = (wave: KnownWave, options = {}): string => {
    const found = told(wave, options);
    expect(found.kind).toBe('not classified');
    return reasonText(found.reasons[0]!);
  };
  expect(reason(waveNamed.dc({}))).toMatch(/direct voltage/);
  expect(reason(waveNamed.noise({}), { noiseRms: 20 })).toMatch(/noise/);
  expect(reason(waveNamed.sine({}), { offset: 900, fullScale: 1200 })).toMatch(/direct voltage with ripple/);
});

test('raw pulse-width modulation is neither square nor a modified sine, and the reason says how it is switched', () => {
  const { kind, reasons } = told(waveNamed.pwm({ carrierRatio: 21 }), { sampleRateHz: 200e3 });
  expect(kind).toBe('not classified');
  expect(reasonText(reasons[0]!)).toMatch(/^switches 42 times a cycle between 2 levels/);
});

test("an offset of the probe doesn't lend a clipped sine a sine's crest factor", () => {
  // Clipped at 0.885: THD 4.8 %, crest factor 1.31; with 5 % of its peak as DC, 1.38.
  const clipped = waveNamed.clipped({ clipRatio: 0.885 });
  const waveform = classifyWave(
    measured(offsetWave(clipped, 0.05 * 0.885), {
      frequencyHz: 50,
      sampleRateHz: 40_000,
      cycles: 5.3,
      startPhaseCycles: 0.2,
    }),
  );
  expect(waveform.kind).toBe('distorted sine');
});
