import { describe, expect, test } from 'vitest';
import { benchUnit } from '../../src/bench/benchUnit.ts';
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
    if (regulationPercent.value === null) throw new Error(regulationPercent.reason);
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
  expect(notices.find(({ code }) => code === 'bench.scaleDiffers')?.message).toContain('600w.csv');
});
