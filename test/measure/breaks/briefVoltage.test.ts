import { expect, test } from 'vitest';
import { briefEvent, briefVoltage } from '../../../src/measure/breaks/briefVoltage.ts';
import { ASSUMED_INSTRUMENT } from '../../../src/measure/doubt/instrument.ts';

const RATE = 20_000;
const CHAIN = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'scope and probe' } as const;

/** 0.3 s of 50 Hz at 325 V from one time to another, nothing else but a little hum. */
function recordOf(fromS: number, toS: number, shape = (turn: number) => Math.sin(2 * Math.PI * turn)) {
  const samples = Float64Array.from({ length: 6000 }, (_, n) => {
    const t = n / RATE;
    return (t >= fromS && t < toS ? 325 * shape(50 * t + 0.13) : 0) + Math.sin(2000 * t);
  });
  return { samples, intervalS: 1 / RATE, startS: -0.1 };
}

test.each([0.0095, 0.0134, 0.02, 0.025])(
  'voltage for %s s and gone again is a failed start, at its times',
  (lengthS) => {
    const record = recordOf(0.1203, 0.1203 + lengthS);
    const brief = briefVoltage(record)!;
    const event = briefEvent(record, brief, CHAIN);
    if (event.kind !== 'failed start') throw new Error(event.kind);
    expect(Math.abs(event.startS.value - 0.0203)).toBeLessThanOrEqual(event.startS.uncertainty);
    expect(Math.abs(event.endS.value - 0.0203 - lengthS)).toBeLessThanOrEqual(event.endS.uncertainty);
    // From zero to 15 % of its peak a sine takes 0.5 ms.
    expect(event.endS.uncertainty).toBeLessThan(0.002);
    expect(event.returnPeak.value).toBeGreaterThan(300);
  },
);

test('a last cycle, or a first, is a loss or a start', () => {
  const kindOf = (fromS: number, toS: number) => {
    const record = recordOf(fromS, toS);
    return briefEvent(record, briefVoltage(record)!, CHAIN).kind;
  };
  expect(kindOf(-1, 0.02)).toBe('cut-off');
  expect(kindOf(0.278, 9)).toBe('start-up');
});

test('a residual voltage that dies out leaves open when the supply went, and the doubt holds it', () => {
  const lostS = 0.1355;
  const at = (t: number) => 325 * Math.sin(2 * Math.PI * (50 * t + 0.13));
  const record = recordOf(0.1203, lostS);
  record.samples.forEach((_, n) => {
    const t = n / RATE;
    if (t >= lostS) record.samples[n]! += at(lostS) * Math.exp(-(t - lostS) / 0.001);
  });
  const event = briefEvent(record, briefVoltage(record)!, CHAIN);
  if (event.kind !== 'failed start') throw new Error(event.kind);
  expect(Math.abs(event.endS.value - 0.1 * -1 - lostS)).toBeLessThanOrEqual(event.endS.uncertainty);
});

test.each([
  ['a pulse to one side', recordOf(0.12, 0.13, () => 1)],
  ['a burst faster than mains', recordOf(0.12, 0.132, (turn) => Math.sin(12 * Math.PI * turn))],
  ['a swing slower than mains', recordOf(0.1, 0.14, (turn) => Math.sin(Math.PI * turn))],
  ['a pulse of 2 ms', recordOf(0.12, 0.122)],
  ['a cycle of a wave that fills its record', recordOf(-1, 9)],
  ['nothing', recordOf(0.1, 0.1)],
])('%s is none', (_, record) => {
  expect(briefVoltage(record)).toBeNull();
});
