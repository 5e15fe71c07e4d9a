import { expect, test } from 'vitest';
import type { BenchUnit } from '../../../src/bench/benchDocument.ts';
import { compareUnits } from '../../../src/bench/compareUnits.ts';
import { benchLines, comparisonLines } from '../../../src/words/bench/benchLines.ts';
import { worded } from '../../../src/words/worded.ts';
import { point } from '../../bench/benchPoints.ts';

const figure = (value: number, uncertainty: number) => ({ value, uncertainty });
const none = { value: null, reason: 'none' };

const unit: BenchUnit = {
  ...{ name: 'red', label: 'Inverter A', nominal: { voltageV: 120, frequencyHz: 60, inferred: true } },
  ratedW: 600,
  points: [
    point(0, 121.62),
    point(600, 117.18, { outcome: 'conditional pass' }),
    point(900, 107, { overload: true }),
    point(null, 118),
  ],
  regulation: { regulationPercent: figure(3.79, 0.03), noLoadW: 0, fullLoadW: 600 },
  droop: {
    ...{
      outputImpedanceOhm: figure(0.867, 0.041),
      openCircuitV: figure(121.6, 4),
      droopPercent: figure(3.7, 0.1),
    },
    ...{ fittedLoadsW: [0, 600], misfit: null },
  },
  clipping: { atW: figure(800, 100), betweenW: [600, 900], shownBy: 'crest factor 1.400 to 1.253' },
  leavesRange: {
    ...{ atW: figure(700, 200), betweenW: [600, 900], shownBy: '117.2 to 107.0 V' },
    range: { limit: { min: 114, max: 126 }, from: 'claim' },
  },
  claims: [
    {
      ...{ text: 'THD < 3 %', quantity: 'thdPercent', value: 5.21, limit: { max: 3 }, outcome: 'fail' },
      ...{ probability: 0, worstFile: '600w.csv', worstLoadW: 600 },
    },
    {
      ...{ text: 'surge 2 kW', quantity: 'surgeW', value: null, limit: { min: 2000 }, outcome: 'not judged' },
      ...{
        probability: null,
        reason: 'no capture or step reaches 2000 W',
        worstFile: null,
        worstLoadW: null,
      },
    },
  ],
  steps: [
    {
      ...{ file: 'on.csv', fromW: 0, toW: 600, resistive: true, atS: figure(0, 0.01), direction: 'on' },
      ...{ beforeV: figure(121, 4), afterV: figure(117, 4), extremeV: figure(110, 4) },
      ...{
        deviationPercent: figure(-9.2, 0.3),
        afterPercent: figure(-3.7, 0.2),
        recoveryS: figure(0.042, 0.01),
      },
    },
  ],
  transfers: [{ file: 't.csv', atS: figure(0, 0.001), transferS: figure(0.013, 0.00002) }],
  energy: [
    {
      ...{
        ratedWh: 730,
        dcWh: figure(637, 13),
        acWh: figure(571, 11),
        usableSharePercent: figure(87.3, 1.7),
      },
      ...{ outletSharePercent: figure(78.2, 1.6), conversionEfficiencyPercent: figure(89.6, 2.5) },
    },
  ],
  notices: [{ code: 'bench.loadTold', message: `Loads are as told. ${'And so on. '.repeat(60)}` }],
};

test('what to doubt stands above the table whole, in the width asked for', () => {
  const lines = benchLines(unit, { width: 80, sheetPath: 'reports/sweep-red.svg' });
  const table = lines.findIndex((line) => line.startsWith('  load'));
  const above = lines
    .slice(0, table)
    .map((line) => line.trim())
    .join(' ');
  expect(above).toContain(`Loads are as told. ${'And so on. '.repeat(60).trim()}`);
  expect(lines.slice(table)).toHaveLength(1 + unit.points.length);
  for (const line of lines) expect([...line].length).toBeLessThanOrEqual(80);
});

test('each thing is said with its figure', () => {
  const text = benchLines(unit, { width: 200 }).join('\n');
  for (const words of [
    'Regulation 3.79 ± 0.03 % from 0 W to 600 W.',
    '“THD < 3 %” fails (5.2 % at 600 W)',
    '“surge 2 kW” can’t be judged (no capture or step reaches 2000 W)',
    'The tops flatten between 600 W and 900 W (crest factor 1.400 to 1.253).',
    'The voltage leaves its range between 600 W and 900 W (117.2 to 107.0 V, claimed).',
    'Step 0 to 600 W −9.2 %, over in 42 ms.',
    'Transfers: 13.0 ms without voltage.',
    'Energy: usable share 87 %, outlet share 78 %, conversion efficiency 90 %.',
    'Inverter A: from nothing to 600 watts its voltage falls by 3.8 %, and 1 of 2 claims fails.',
    '6 captures of one evening, not a certificate.',
  ])
    expect(text).toContain(words);
});

test('the table keeps volts to what scatters, marks overload, and puts no number where the load is unknown', () => {
  const rows = benchLines(unit).slice(-unit.points.length);
  expect(rows[0]).toMatch(/^ {2}0 W +121\.6 /);
  expect(rows[1]).toMatch(/117\.2 .*probably holds$/);
  expect(rows[2]).toMatch(/overload$/);
  expect(rows[3]).toMatch(/^ {2}unknown /);
});

test('a bound in the table is rounded up, as on the sheet: rounded down it would be none', () => {
  const bound = { value: 0.06, uncertainty: 0.25, notAbove: 0.3811 };
  const rows = benchLines({ ...unit, points: [{ ...point(300, 120), thdPercent: bound }] });
  expect(rows.at(-1)).toContain('< 0.39');
});

test('a name from a plan can’t reach the terminal’s controls', () => {
  expect(benchLines({ ...unit, label: 'red\u001b[31m' }).join('')).not.toContain('\u001b');
});

test('units side by side: a column each, the earlier one marked, times in ms', () => {
  const units = [
    unit,
    { ...unit, earlier: 'old.json', steps: [], droop: { ...unit.droop, outputImpedanceOhm: none } },
  ];
  const document = {
    schema: 'sineassay/bench@1' as const,
    units,
    comparison: worded(compareUnits(units)),
    failures: [],
  };
  const lines = comparisonLines(document);
  expect(lines[0]).toMatch(/^Side by side +red +red, earlier$/);
  expect(lines.find((line) => line.startsWith('output impedance'))).toMatch(/0\.87 ± 0\.04 Ω +–$/);
  expect(lines.find((line) => line.startsWith('longest transfer'))).toMatch(/13\.000 ± 0\.020 ms/);
  expect(comparisonLines({ ...document, units: [unit], comparison: [] })).toEqual([]);
});
