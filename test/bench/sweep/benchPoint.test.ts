import { expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { shownLoad } from '../../../src/bench/shownLoad.ts';
import { benchPoint, rmsBudget } from '../../../src/bench/sweep/benchPoint.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { sineChannels } from '../../cli/smallCapture.ts';

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
  expect(measured.loadW.value).toBeCloseTo(300, 1);
  expect(measured.currentA.value).toBeCloseTo(2.5, 3);

  const told = pointOf('evening/300w.csv', 400, null);
  expect(told).toMatchObject({ loadW: { value: 400 }, loadFrom: 'told', currentFrom: 'told' });
  expect(told.currentA.value).toBeCloseTo(400 / 120, 3);

  // A name's power is worth a current as a told one is: of a resistor on 120 V.
  const named = pointOf('evening/300w.csv', null, null);
  expect(named).toMatchObject({ loadW: { value: 300 }, loadFrom: 'file name', currentFrom: 'file name' });
  expect(named.currentA.value).toBeCloseTo(2.5, 3);

  const unknown = pointOf('300w/first.csv', null, null);
  expect(unknown).toMatchObject({ loadFrom: 'unknown', currentFrom: 'unknown', loadW: { value: null } });
  expect(unknown.currentA.value).toBe(null);
});
