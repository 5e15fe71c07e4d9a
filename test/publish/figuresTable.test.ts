import { expect, test } from 'vitest';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import { figuresTable } from '../../src/publish/figuresTable.ts';
import { assays } from '../fixtures/assays.ts';
import { stories } from '../fixtures/stories.ts';

const results = ['goodSine', 'current', 'noise', 'modifiedSine'].map((name): MeasureResult => {
  const { current, ...result } = assays[name]!().result;
  if (current === undefined) return result;
  // The fixture's current holds its volts too.
  const { rmsV: _, ...own } = current as typeof current & { readonly rmsV?: unknown };
  return { ...result, current: own };
});
const [heads, ...rows] = figuresTable(results, '0.0.0');
const cell = (row: number, heading: string) => rows[row]?.[heads!.indexOf(heading)];

test('a row a result, as long as the headings, each heading once', () => {
  expect(rows.map(({ length }) => length)).toEqual(results.map(() => heads?.length));
  expect(new Set(heads).size).toBe(heads?.length);
});

test('figures and their uncertainties are numbers as measured, empty where there is none', () => {
  const { rmsV, crestFactor, thdPercent } = results[0]!.voltage!;
  expect(cell(0, 'voltage RMS (V)')).toBe(rmsV.value);
  expect(cell(0, 'voltage RMS uncertainty (V)')).toBe(rmsV.value! * 0.036);
  expect(cell(0, 'voltage crest factor')).toBe(crestFactor.value);
  expect(cell(0, 'voltage THD of fundamental (%)')).toBe(thdPercent.value);
  expect(cell(0, 'THD to order')).toBe(50);
  expect(cell(2, 'voltage crest factor')).toBe(null);
  expect(cell(2, 'voltage crest factor uncertainty')).toBe(null);
  expect(cell(1, 'voltage RMS (V)')).toBe(null);
  expect(cell(1, 'current RMS (A)')).toBe(results[1]!.current!.rmsA.value);
});

test('distortion to another order stands in the same column, a bound beside it', () => {
  const [good] = results;
  const voltage = {
    ...good!.voltage!,
    thdOrders: 20,
    thdPercent: { value: 0.2, uncertainty: 0.2, notAbove: 0.4 },
  };
  const [heading, first, second] = figuresTable([good!, { ...good!, voltage }], '0.0.0');
  const at = heading!.indexOf('voltage THD of fundamental (%)');
  expect(heading?.slice(at + 1, at + 3)).toEqual([
    'voltage THD of fundamental uncertainty (%)',
    'voltage THD of fundamental not above (%)',
  ]);
  expect(second?.slice(at, at + 3)).toEqual([0.2, 0.2, 0.4]);
  expect(first?.[at + 2]).toBe(null);
});

test('a name that stands for volts and for amperes has a column in either', () => {
  const exactly = (value: number) => ({ value, uncertainty: value / 100 });
  const input = {
    ...{ voltageChannel: 'CH3', currentChannel: 'CH4', activeW: exactly(300) },
    ...{ meanV: exactly(12), meanA: exactly(25), rippleV: exactly(0.4), rippleA: exactly(7) },
    ...{ rippleVoltagePercent: exactly(3.3), rippleCurrentPercent: exactly(28) },
  };
  const [heading, row] = figuresTable([{ ...results[0]!, input }], '0.0.0');
  const at = heading!.indexOf('DC input ripple, RMS (V)');
  expect(heading!.slice(at, at + 4)).toEqual([
    ...['DC input ripple, RMS (V)', 'DC input ripple, RMS uncertainty (V)'],
    ...['DC input ripple, RMS (A)', 'DC input ripple, RMS uncertainty (A)'],
  ]);
  expect(row!.slice(at, at + 4)).toEqual([0.4, 0.004, 7, 0.07]);
});

test('each row names the claims’ worst outcome, the capture’s digest and the program', () => {
  expect([cell(0, 'claims'), cell(3, 'claims'), cell(1, 'claims')]).toEqual(['holds', 'fails', null]);
  expect(cell(0, 'sha256')).toBe(results[0]?.sha256);
  expect(cell(0, 'measured with')).toBe('sineassay 0.0.0');
});

test('what happened stands in words and numbers beside the claims; steady waves have no such columns', () => {
  expect(heads).not.toContain('event');
  const [headings, ...lines] = figuresTable(
    [stories.trip, stories.transfer, stories.step, stories.steady],
    '0.0.0',
  );
  const cells = (heading: string) => lines.map((line) => line[headings!.indexOf(heading)]);
  expect(cells('event')).toEqual(['cut-off', 'transfer', 'load on', null]);
  expect(cells('what happened').map((text) => String(text).replaceAll('\u00a0', ' '))).toEqual([
    'Output lost 0.14 s after 1500 W came on',
    'Output away for 14.2 ms',
    'When the load came on, the voltage fell by 8.4 %',
    'null',
  ]);
  expect(cells('event at (s)')).toEqual([0.84, 0.9, 0.4, null]);
  expect(cells('event lasts (s)')).toEqual([null, 0.01423, null, null]);
  expect(cells('load at the event (W)')).toEqual([1500, null, null, null]);
  expect(cells('load held before it (s)')).toEqual([0.14, null, null, null]);
  expect(cells('load held before it uncertainty (s)')).toEqual([0.0003, null, null, null]);
  expect(cells('events and steps in all')).toEqual([1, 1, 1, 0]);
});
