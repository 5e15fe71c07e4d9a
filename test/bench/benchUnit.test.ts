import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { UnitResult } from '../../src/bench/benchDocument.ts';
import { benchUnit } from '../../src/bench/benchUnit.ts';
import type { MeasuredUnit } from '../../src/bench/measuredUnit.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';
import { worded } from '../../src/words/worded.ts';
import { syntheticUnit } from './syntheticUnit.ts';

describe('a sweep of sines behind an impedance of 1 Ω, whose tops are cut from 800 W on', () => {
  // V = 120 − 1 Ω · P / V, so V = 60 + √(3600 − P).
  const volts = (loadW: number): number => 60 + Math.sqrt(3600 - loadW);
  const sine = (loadW: number) => ({ loadW, wave: { shape: 'sine' as const, rmsV: volts(loadW) } });
  const clipped = (loadW: number, clipRatio: number) => ({
    loadW,
    wave: { shape: 'clipped' as const, clipRatio, rmsV: volts(loadW) - 8 },
  });
  const waves = [sine(600), sine(0), sine(300), clipped(800, 0.85), clipped(1000, 0.75)];
  const unit = benchUnit(syntheticUnit(waves, ['pure sine', '120 V ±7 %', 'THD < 3 %', 'power 600 W']));

  test('captures stand by rising load; those above the rated load are overload and judge nothing', () => {
    expect(unit.points.map(({ loadW }) => loadW.value)).toEqual([0, 300, 600, 800, 1000]);
    expect(unit.points.map(({ overload }) => overload)).toEqual([false, false, false, true, true]);
    expect(unit.points.at(-1)?.outcome).toBe(null);
  });

  test('the impedance lies within its uncertainty, and so does the regulation', () => {
    const { outputImpedanceOhm, openCircuitV } = unit.droop;
    const { regulationPercent } = unit.regulation;
    if (outputImpedanceOhm.value === null || openCircuitV.value === null) throw new Error('no line');
    if (regulationPercent.value === null) throw new Error(JSON.stringify(regulationPercent.reason));
    expect(Math.abs(outputImpedanceOhm.value - 1)).toBeLessThan(outputImpedanceOhm.uncertainty);
    expect(Math.abs(openCircuitV.value - 120)).toBeLessThan(openCircuitV.uncertainty);
    const regulation = 100 * (120 / volts(600) - 1);
    expect(Math.abs(regulationPercent.value - regulation)).toBeLessThan(regulationPercent.uncertainty);
    // Volts are good to 4 %, their ratio to a few hundredths: a gain common to all would show here.
    expect(regulationPercent.uncertainty).toBeLessThan(0.2);
  });

  test('the load from which it clips', () => {
    expect(unit.clipping.betweenW).toEqual([600, 800]);
    expect(unit.droop.fittedLoadsW).toEqual([0, 300, 600]);
  });

  test('the load at which the voltage leaves what is claimed', () => {
    // 111.6 V: 114.8 V at 600 W still, 104.9 V at 800 W no more.
    expect(unit.leavesRange.range).toEqual({
      limit: { min: expect.closeTo(111.6, 9), max: expect.closeTo(128.4, 9) },
      from: 'claim',
    });
    expect(unit.leavesRange.betweenW).toEqual([600, 800]);
  });

  test('claims hold up to the rated load, and the worst capture is named', () => {
    expect(unit.claims.map(({ text, outcome }) => [text, outcome])).toEqual([
      ['pure sine', 'pass'],
      ['120 V ±7 %', 'conditional pass'],
      ['THD < 3 %', 'pass'],
      ['power 600 W', 'conditional pass'],
    ]);
    expect(unit.claims[1]?.worstLoadW).toBe(600);
  });
});

test('a capture at the probe’s own scale is named', () => {
  const { notices } = benchUnit(
    syntheticUnit(
      [
        { loadW: 0, wave: { shape: 'sine' } },
        { loadW: 300, wave: { shape: 'sine' } },
        { loadW: 600, wave: { shape: 'sine', probeRatio: 100 } },
      ],
      [],
    ),
  );
  expect(notices).toContainEqual(expect.objectContaining({ code: 'bench.scaleDiffers', file: '600w.csv' }));
});

const noticeOf = (unit: UnitResult, code: string): string | undefined =>
  worded(unit).notices.find((notice) => notice.code === code)?.message;

test('a doubt of every capture’s scale is one of the whole test, said once with all of them', () => {
  const wave = { shape: 'sine' as const, probeRatio: 100 };
  const unit = benchUnit(
    syntheticUnit(
      [0, 300, 600].map((loadW) => ({ loadW, wave })),
      [],
    ),
  );
  expect(noticeOf(unit, 'scale.suspect')).toMatch(/^0w\.csv: The scale looks wrong: 1\.2 V.*--scale 100/);
  expect(noticeOf(unit, 'scale.suspect')).toMatch(/The same doubt of 300w\.csv, 600w\.csv\.$/);
  expect(unit.notices.filter(({ code }) => code === 'scale.suspect')).toHaveLength(1);
});

test('so is another outlet that the volts may be meant for', () => {
  const unit = benchUnit(
    syntheticUnit(
      [
        { loadW: 0, wave: { shape: 'sine', rmsV: 116 } },
        { loadW: 300, wave: { shape: 'sine', rmsV: 114 } },
      ],
      [],
    ),
  );
  expect(noticeOf(unit, 'nominal.other')).toMatch(
    /^0w\.csv: Taken for 120 V 60 Hz.*115 V 60 Hz is possible too/,
  );
  // 121 V without load are no 115 V, whatever they sag to.
  const sags = syntheticUnit(
    [
      { loadW: 0, wave: { shape: 'sine', rmsV: 121 } },
      { loadW: 900, wave: { shape: 'sine', rmsV: 116 } },
    ],
    [],
  );
  expect(noticeOf(benchUnit(sags), 'nominal.other')).toBe(undefined);
});

describe('a sweep whose middle capture is of a rectifier behind the same impedance', () => {
  const resistor = (loadW: number, amperes: number) => measuredUnitOf(loadW, amperes, (sine) => sine);
  // Conducts near the peaks alone: a twelfth of the time to either side.
  const pulses = measuredUnitOf(300, 2.5, (sine) =>
    Math.abs(sine) > Math.cos(Math.PI / 12) ? Math.sign(sine) : 0,
  );
  const unit = benchUnit({
    ...syntheticUnit([], []),
    sweep: [resistor(1, 0.01), pulses, resistor(600, 5)],
  });

  test('the load is marked, and kept out of the line for the output impedance', () => {
    expect(unit.points.map(({ loadKind }) => loadKind)).toEqual([undefined, 'rectifier', undefined]);
    expect(unit.droop.fittedLoadsW).toHaveLength(2);
    expect(noticeOf(unit, 'bench.loadKind')).toMatch(/has a rectifier load: it is left out of the line/);
    // 2 Ω: what the two resistors show. With the pulses, of 1 V more than their RMS takes, it would be another.
    const { outputImpedanceOhm } = unit.droop;
    if (outputImpedanceOhm.value === null) throw new Error(JSON.stringify(outputImpedanceOhm.reason));
    expect(Math.abs(outputImpedanceOhm.value - 2)).toBeLessThan(outputImpedanceOhm.uncertainty);
  });
});

/** A capture of 120 V behind 2 Ω, and of a load whose current is that shape of its voltage's sine. */
function measuredUnitOf(
  loadW: number,
  rmsA: number,
  shape: (sine: number) => number,
): MeasuredUnit['sweep'][number] {
  const count = 3000;
  const sines = Float64Array.from({ length: count }, (_, i) =>
    Math.sin(2 * Math.PI * (0.1 + (60 * i) / 20_000)),
  );
  const current = sines.map(shape);
  const rms = Math.sqrt(current.reduce((sum, x) => sum + x * x, 0) / count);
  const isResistor = current.every((x, i) => x === sines[i]);
  // The pulses take a volt more than the impedance and their RMS say.
  const volts = 120 - 2 * rmsA - (isResistor ? 0 : 1);
  const bytes = writeCapture('comma', {
    channels: [
      { name: 'Outlet', unit: 'V', samples: sines.map((x) => Math.SQRT2 * volts * x) },
      { name: 'Clamp', unit: 'A', samples: current.map((x) => (x * rmsA) / rms) },
    ],
    ...{ startS: 0, intervalS: 1 / 20_000 },
  });
  const [assay] = assayCapture(readCapture(bytes), { file: `${loadW}w.csv`, sha256: '0'.repeat(64) });
  return { ...assay!, told: { loadW: null } };
}
