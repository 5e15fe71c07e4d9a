import { expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { shownLoad } from '../../../src/bench/shownLoad.ts';
import { benchPoint, rmsBudget } from '../../../src/bench/sweep/benchPoint.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { sineChannels } from '../../cli/smallCapture.ts';

/**
 * Samples are written with seven significant digits: RMS and power come out right to that, and what they are
 * off by here is less than this share.
 */
const WRITTEN = 1e-6;
const isNear = (value: number | null, truth: number): boolean => Math.abs(value! / truth - 1) < WRITTEN;

/** 120 V, and with `amperes` a resistor's current beside it. */
function pointOf(file: string, loadW: number | null, amperes: number | null) {
  const bytes = sineChannels([
    { name: 'Outlet', unit: 'V', rms: 120 },
    ...(amperes === null ? [] : [{ name: 'Clamp', unit: 'A', rms: amperes }]),
  ]);
  const [assay] = assayCapture(
    readCapture(bytes),
    { file, sha256: '0'.repeat(64) },
    loadW === null ? {} : { load: `${loadW} W` },
  );
  const { result, budgets } = assay!;
  const told = { loadW };
  const shown = shownLoad(result, told);
  return benchPoint({ result, told, shown, budget: rmsBudget({ budgets }), ratedW: null });
}

test('a load is the measured one, else the told one, else the one in the file’s name', () => {
  // 2.5 A at 120 V, whatever words say.
  const measured = pointOf('evening/300w.csv', 400, 2.5);
  expect(measured).toMatchObject({ loadFrom: 'measured', currentFrom: 'measured' });
  expect(isNear(measured.loadW.value, 300)).toBe(true);
  expect(isNear(measured.currentA.value, 2.5)).toBe(true);

  const told = pointOf('evening/300w.csv', 400, null);
  expect(told).toMatchObject({ loadW: { value: 400 }, loadFrom: 'told', currentFrom: 'told' });
  expect(isNear(told.currentA.value, 400 / 120)).toBe(true);

  // A name's power is worth a current as a told one is: of a resistor on 120 V.
  const named = pointOf('evening/300w.csv', null, null);
  expect(named).toMatchObject({ loadW: { value: 300 }, loadFrom: 'file name', currentFrom: 'file name' });
  expect(isNear(named.currentA.value, 2.5)).toBe(true);

  const unknown = pointOf('300w/first.csv', null, null);
  expect(unknown).toMatchObject({ loadFrom: 'unknown', currentFrom: 'unknown', loadW: { value: null } });
  expect(unknown.currentA.value).toBe(null);
});
