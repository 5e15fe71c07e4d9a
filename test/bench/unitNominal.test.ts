import { expect, test } from 'vitest';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { nominalOfUnit, unitNominal } from '../../src/bench/measuredUnit.ts';
import type { Nominal } from '../../src/judge/nominal/mainsNominals.ts';

const at = (voltageV: number, frequencyHz = 60): Nominal => ({ voltageV, frequencyHz, inferred: true });
type Seen = Pick<AssayResult, 'nominal' | 'loadSeen'>;

/** Which files were measured, and what the unit is taken for. */
async function taken(captures: readonly { file: string; loadW: number | null; shows: Seen | null }[]) {
  const measured: string[] = [];
  const nominal = await unitNominal(captures, async ({ file, shows }) => {
    measured.push(file);
    return shows;
  });
  return { nominal, measured };
}

test('a unit is taken for what its lightest load shows, and no other capture is measured for that', async () => {
  const found = await taken([
    { file: 'b.csv', loadW: 600, shows: { nominal: at(100) } },
    { file: 'a.csv', loadW: 0, shows: { nominal: at(120) } },
    { file: 'c.csv', loadW: null, shows: { nominal: at(240) } },
  ]);
  expect(found).toEqual({ nominal: at(120), measured: ['a.csv'] });
});

test('a load that is not told stands in the file’s name', async () => {
  const found = await taken([
    { file: 'evening/600w.csv', loadW: null, shows: { nominal: at(100) } },
    { file: 'evening/no-load.csv', loadW: null, shows: { nominal: at(120) } },
  ]);
  expect(found).toEqual({ nominal: at(120), measured: ['evening/no-load.csv'] });
});

test('where the lightest shows nothing, the next decides', async () => {
  const found = await taken([
    { file: 'a.csv', loadW: 0, shows: null },
    { file: 'b.csv', loadW: 300, shows: { nominal: null } },
    { file: 'c.csv', loadW: 600, shows: { nominal: at(230, 50) } },
  ]);
  expect(found).toEqual({ nominal: at(230, 50), measured: ['a.csv', 'b.csv', 'c.csv'] });
  expect((await taken([])).nominal).toBeNull();
});

test('loads that only a current tells are measured before they are put in order', async () => {
  const measured = (watts: number, nominal: Nominal): Seen => ({
    nominal,
    loadSeen: { from: 'measured', text: `${watts} W`, watts },
  });
  const found = await taken([
    { file: 'a.csv', loadW: null, shows: measured(580, at(100)) },
    { file: 'b.csv', loadW: null, shows: measured(3, at(120)) },
  ]);
  expect(found.nominal).toEqual(at(120));
});

test('what was told of a capture stands before the unit’s, and only voltages that were inferred stay open', () => {
  expect(nominalOfUnit({}, null)).toEqual({});
  expect(nominalOfUnit({}, at(120))).toEqual({ voltageV: 120, frequencyHz: 60, ofUnit: true });
  expect(nominalOfUnit({ voltageV: 110 }, at(120))).toEqual({ voltageV: 110, frequencyHz: 60 });
  expect(nominalOfUnit({ voltageV: 127, frequencyHz: 60 }, at(120))).toEqual({
    voltageV: 127,
    frequencyHz: 60,
  });
  expect(nominalOfUnit({}, { ...at(120), inferred: false })).toEqual({ voltageV: 120, frequencyHz: 60 });
});
