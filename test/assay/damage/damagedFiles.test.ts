import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import type { AssayResult } from '../../../src/assay/measureDocument.ts';
import { MeasureError } from '../../../src/base/measureError.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { sampleWave } from '../../../src/synth/sampleWave.ts';
import { type ShapeName, waveNamed } from '../../../src/synth/waveNamed.ts';
import { draws } from '../../samples.ts';
import { type Damage, FIRST_ROW, secondHeader, structural, wrongValue } from './damagedFile.ts';

/** More runs for a longer search: FUZZ_RUNS=5000 npx vitest run test/verdict/damage */
const runs = (usual: number): number => Number(process.env.FUZZ_RUNS ?? draws(usual, Math.ceil(usual / 8)));

/** A capture of four cycles as lines, header first. */
function writtenLines(shape: ShapeName): readonly string[] {
  const sampleRateHz = 20_000;
  const samples = sampleWave(waveNamed[shape]({}), {
    ...{ frequencyHz: 50, sampleRateHz, cycles: 4.3, startPhaseCycles: 0.13 },
    ...{ noiseRms: 0.004, bits: 8, fullScale: 1.4, seed: 3 },
  });
  return [
    'Time,CH1',
    's,V',
    ...Array.from(samples, (v, n) => `${(n / sampleRateHz).toFixed(6)},${(325 * v).toFixed(3)}`),
  ];
}

function measured(text: string | Uint8Array): AssayResult | MeasureError {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  try {
    return assayCapture(readCapture(bytes), { file: 'damaged.csv', sha256: '' })[0]!.result;
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
}

const shapes = ['sine', 'modified'] as const;
const sound = Object.fromEntries(
  shapes.map((shape) => {
    const lines = writtenLines(shape);
    return [shape, { lines, result: measured(lines.join('\n')) as AssayResult }];
  }),
) as Record<(typeof shapes)[number], { lines: readonly string[]; result: AssayResult }>;

/** Notices that the sound file does not give. */
function news(result: AssayResult, shape: (typeof shapes)[number]): readonly string[] {
  const known = new Set(sound[shape].result.notices.map(({ code }) => code));
  return result.notices.map(({ code }) => code).filter((code) => !known.has(code));
}

describe.each(shapes)('a %s', (shape) => {
  const { lines, result: undamaged } = sound[shape];
  const { rmsV, frequencyHz } = undamaged.voltage!;

  function eachPlace(damage: Damage, judge: (result: AssayResult) => void): void {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (where) => {
        const result = measured(damage(lines, where));
        if (!(result instanceof MeasureError)) judge(result);
      }),
      { numRuns: runs(8) },
    );
  }

  test.each(Object.entries(structural))('%s is refused, or noticed and leaves the figures', (_, damage) => {
    eachPlace(damage, (result) => {
      expect(news(result, shape)).not.toEqual([]);
      // One row in seventeen hundred, or a hundred of them left out: the rest tells the same.
      expect(Math.abs(result.voltage!.rmsV.value! / rmsV.value! - 1)).toBeLessThan(0.01);
      expect(Math.abs(result.voltage!.frequencyHz.value! / frequencyHz.value! - 1)).toBeLessThan(0.01);
    });
  });

  test('a second header is noticed: what follows is another record', () => {
    eachPlace(secondHeader, (result) => expect(news(result, shape)).toContain('segments.first'));
  });

  test.each(Object.entries(wrongValue))('%s is refused or noticed', (_, damage) => {
    eachPlace(damage, (result) => expect(news(result, shape)).not.toEqual([]));
  });

  test('a file cut anywhere is refused, or measured as what is left of it', () => {
    const text = lines.join('\n');
    fc.assert(
      fc.property(fc.nat({ max: text.length - 2 }), (length) => {
        const result = measured(text.slice(0, length));
        if (result instanceof MeasureError) return;
        const whole = lines.join('\n').slice(0, length).split('\n').length - 1 - FIRST_ROW;
        expect(result.capture.samples).toBeLessThanOrEqual(whole + 1);
        // Under a cycle and a third there may be nothing but a plateau left; more is the same wave.
        if (whole < 1.3 * 400) expect(result.waveform.kind).toBe('not classified');
        else expect(Math.abs(result.voltage!.rmsV.value! / rmsV.value! - 1)).toBeLessThan(0.01);
      }),
      { numRuns: runs(25) },
    );
  });

  test('bytes changed anywhere never end in a crash', () => {
    const bytes = new TextEncoder().encode(lines.join('\n'));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat({ max: bytes.length - 1 }), fc.nat({ max: 255 })), {
          minLength: 1,
          maxLength: 30,
        }),
        (changes) => {
          const changed = Uint8Array.from(bytes);
          for (const [at, byte] of changes) changed[at] = byte;
          measured(changed);
        },
      ),
      { numRuns: runs(25) },
    );
  });
});

test('over one row in a hundred broken is an error', () => {
  const { lines } = sound.sine;
  const broken = lines.map((line, n) => (n > FIRST_ROW && n % 60 === 0 ? 'no numbers here' : line));
  expect(measured(broken.join('\n'))).toBeInstanceOf(MeasureError);
});

test('bytes of any kind are refused in words', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => {
      measured(bytes);
    }),
    { numRuns: runs(200) },
  );
});

test('ten thousand columns are read or refused, not crashed on', () => {
  const rows = Array.from({ length: 60 }, (_, n) =>
    [n * 1e-3, ...new Array(10_000).fill(Math.sin(n / 5).toFixed(3))].join(','),
  );
  measured(rows.join('\n'));
});

test('sound waves of all shapes give no notice of a single wrong value', () => {
  const names = Object.keys(waveNamed) as ShapeName[];
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.double({ min: 2, max: 8, noNaN: true }),
      fc.integer({ min: 60, max: 2000 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom(0, 0.001, 0.01, 0.03),
      fc.constantFrom(undefined, 8, 12),
      fc.constantFrom(0, 0.002, 0.01),
      fc.boolean(),
      (shape, cycles, samplesACycle, startPhaseCycles, noiseRms, bits, edgeCycles, isRinging) => {
        const wave = waveNamed[shape]({
          edgeCycles,
          ...(isRinging ? { ringing: { ratio: 0.2, order: 40, decayCycles: 0.02 } } : {}),
        });
        const samples = sampleWave(wave, {
          ...{
            frequencyHz: 50,
            sampleRateHz: 50 * samplesACycle,
            cycles,
            startPhaseCycles,
            noiseRms,
            seed: 5,
          },
          ...(bits === undefined ? {} : { bits, fullScale: 1.6 }),
        });
        const rows = Array.from(
          samples,
          (v, n) => `${(n / (50 * samplesACycle)).toFixed(8)},${(325 * v).toFixed(4)}`,
        );
        const result = measured(['s,V', ...rows].join('\n'));
        if (result instanceof MeasureError) return;
        expect(result.notices.map(({ code }) => code)).not.toContain('value.outlier');
      },
    ),
    { numRuns: runs(60) },
  );
});
