import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { planOf, readPlan } from '../../../src/bench/plan/readPlan.ts';

const full = `nominal: 120V/60Hz
scale: { CH1: 200, CH2: 10 }
instrument:
  gainPercent: 1.5
rule: simple
earlier: [last-month/bench.json]
units:
  - name: A
    label: Inverter A
    claims:
      - 120 V ±5 %
      - power: 600 W
      - capacity 650 Wh
    captures:
      - file: idle.csv
        load: no load
        battery: 12.9 V
      - file: kettle.csv
        load: 1.2 kW
        battery: 80 %
        note: fan running
        scale: 100
        instrument: kettle.yaml
      - file: clamp.csv
        load: measured
        current: CH2
      - file: unknown.csv
    steps:
      - { file: on.csv, from: 0, to: 600 W, resistive: true }
    transfers:
      - file: mains.csv
    energy:
      - { dcWh: 550 ± 2 %, acWh: 490 Wh ± 3 }
`;

test('a whole plan: units, loads in W, options inherited and overridden', () => {
  const common = {
    nominal: { voltageV: 120, frequencyHz: 60 },
    scales: [
      { channel: 'CH1', factor: 200 },
      { channel: 'CH2', factor: 10 },
    ],
    instrument: { gainPercent: 1.5 },
  };
  const { units, earlier, rule } = readPlan(full);
  const [unit] = units;
  expect({ earlier, rule }).toEqual({ earlier: ['last-month/bench.json'], rule: 'simple' });
  expect(unit).toMatchObject({ name: 'A', label: 'Inverter A' });
  expect(unit?.claims.map(({ quantity }) => quantity)).toEqual(['rmsV', 'powerW', 'capacityWh']);
  expect(unit?.captures).toEqual([
    { file: 'idle.csv', options: common, told: { loadW: 0, battery: { directV: 12.9 } }, load: 'no load' },
    {
      file: 'kettle.csv',
      options: { ...common, scales: [{ channel: null, factor: 100 }], instrument: 'kettle.yaml' },
      told: { loadW: 1200, battery: { percent: 80 }, note: 'fan running' },
      load: '1200 W',
    },
    { file: 'clamp.csv', options: { ...common, current: 'CH2' }, told: { loadW: null } },
    { file: 'unknown.csv', options: common, told: { loadW: null } },
  ]);
  expect(unit?.steps[0]?.told).toEqual({ fromW: 0, toW: 600, resistive: true });
  expect(unit?.transfers).toEqual([{ file: 'mains.csv', options: common }]);
  expect(unit?.energy).toEqual([
    {
      ratedWh: 650,
      dcWh: { value: 550, uncertainty: expect.closeTo(11, 9) },
      acWh: { value: 490, uncertainty: 3 },
    },
  ]);
});

const head = 'units:\n  - name: A\n    captures:\n      - file: a.csv\n';

test.each([
  ['a key misspelt', `${head}        laod: 300 W\n`, 5, 'The key "laod" is not known in a capture.', 'load'],
  ['a load in volts', `${head}        load: 300 V\n`, 5, '"300 V" is no load.', 'watts'],
  ['a battery over the top', `${head}        battery: 120 %\n`, 5, 'is no state of a battery', '80 %'],
  ['a claim nobody understands', `${head}    claims:\n      - nice sine\n`, 6, 'nice sine', 'kind of wave'],
  ['a scale in words', `${head}    scale: much\n`, 5, 'A scale is a number other than zero.', '200'],
  ['a nominal without units', `${head}nominal: high\n`, 5, 'nominal voltage', 'volts and hertz'],
  ['a rule that is none', `${head}rule: strict\n`, 5, 'no such decision rule', 'guarded or simple'],
  ['an instrument key', `${head}instrument:\n  gain: 3\n`, 6, 'The key "gain" is not known.', 'gainPercent'],
  [
    'a capture without a file',
    `${head}      - load: 300 W\n`,
    5,
    'The file of the capture is missing.',
    '300w.csv',
  ],
  ['a unit without a name', 'units:\n  - label: A\n', 2, 'The name of the unit is missing.', 'such as A'],
  [
    'two units of one name',
    `${head}  - name: a\n    captures: [{ file: b.csv }]\n`,
    5,
    'Two units are named "a".',
    'its own',
  ],
  ['a unit of nothing', 'units:\n  - name: A\n', 2, 'The unit "A" has nothing to measure.', 'captures'],
  ['no unit', 'rule: simple\n', 1, 'The plan names no unit.', 'units'],
  [
    'captures that are no list',
    'units:\n  - name: A\n    captures: a.csv\n',
    3,
    'Captures form a list.',
    '- ',
  ],
  [
    'energy without a rating',
    `${head}    energy:\n      - dcWh: 209\n`,
    6,
    'The rated energy is missing.',
    'ratedWh',
  ],
  ['a plan that is a list', '- a.csv\n', 1, 'This is not a plan.', 'units'],
  ['an empty file', '', 1, 'This is not a plan.', 'units'],
])('%s: line, message and what was expected', (_, yaml, line, message, expected) => {
  const error = thrownBy(() => readPlan(yaml));
  expect(error.code).toBe('plan.schema');
  expect(error.message).toContain(message);
  expect(error.detail.expected).toContain(expected);
  expect(error.detail.line).toBe(line);
});

test('no YAML at all names the line too', () => {
  const error = thrownBy(() => readPlan(`${head}        load: "300\n`));
  expect(error.code).toBe('yaml.syntax');
  expect(error.detail.line).toBeGreaterThanOrEqual(5);
});

test('a plan that came from no file has errors without a line', () => {
  const captures = [{ file: 'a.csv', load: 'much' }];
  const error = thrownBy(() => planOf({ units: [{ name: 'A', captures }] }));
  expect(error.detail).not.toHaveProperty('line');
});

function thrownBy(act: () => unknown): MeasureError {
  try {
    act();
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}
