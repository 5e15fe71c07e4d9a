import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { planOf, readPlan } from '../../../src/bench/plan/readPlan.ts';
import { errorWords } from '../../../src/words/errors/errorWords.ts';

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
  [
    'a key misspelt that had to be there',
    'units:\n  - name: A\n    captures:\n      - flie: a.csv\n',
    4,
    'The key "flie"',
    'file',
  ],
  ['a list of scales', `${head}scale: [1, 2]\n`, 5, 'or one for each channel', 'CH1: 200'],
  ['a scale of a channel', `${head}scale:\n  CH1: 0\n`, 6, 'A scale is a number', '200'],
  ['a list for an instrument', `${head}instrument: [3]\n`, 5, 'An instrument is a file', 'gainPercent'],
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
  const words = errorWords(error);
  expect(words.message).toContain(message);
  expect(words.expected).toContain(expected);
  expect(error.place).toEqual({ line });
});

test('no YAML at all names the line too', () => {
  const error = thrownBy(() => readPlan(`${head}        load: "300\n`));
  expect(error.code).toBe('yaml.syntax');
  expect(error.place.line).toBeGreaterThanOrEqual(5);
});

test('a plan that came from no file has errors without a line', () => {
  const captures = [{ file: 'a.csv', load: 'much' }];
  const error = thrownBy(() => planOf({ units: [{ name: 'A', captures }] }));
  expect(error.place).toEqual({});
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

const named = (name: string): string =>
  `units:\n  - name: A\n    label: ${name}\n    captures: [{ file: a.csv }]\n`;

test.each([
  ['a label between stars', named('*new*'), 3, 12, '*new*, a reference to something that is named nowhere'],
  [
    'an alias before its anchor',
    `a: *b\nb: &b 1\n`,
    1,
    4,
    '*b, a reference to something that is named nowhere',
  ],
  ['a list within itself', 'units: &x\n  - *x\n', 2, 5, '*x, which refers to what it stands in'],
  ['a mapping within itself', 'a: &a\n  b: *a\n', 2, 6, '*a, which refers to what it stands in'],
  ['a label that begins with !', named('!new unit'), 3, 12, 'Unresolved tag: !new'],
  ['a second document', 'units: []\n---\nunits: []\n', 2, 1, 'a second document behind a line of ---'],
  [
    'lists of lists',
    `units: ${'['.repeat(20_000)}`,
    1,
    expect.any(Number),
    expect.stringMatching(/deeper than/),
  ],
  ['a type of its own', 'a: !!binary "QQ=="\n', 1, 4, expect.stringContaining('Unresolved tag')],
  ['a list for a key', '? [a, b]\n: c\n', 1, 3, expect.any(String)],
  ['levels without end', '['.repeat(100_000), 1, expect.any(Number), expect.any(String)],
  [
    'references to references',
    bomb(),
    expect.any(Number),
    expect.any(Number),
    expect.stringContaining('references to references'),
  ],
])('%s is no plan, with its place', (_, text, line, column, received) => {
  const error = thrownBy(() => readPlan(text));
  expect(error.code).toBe('yaml.syntax');
  expect(error.place).toEqual({ line, column });
  expect(errorWords(error).received).toEqual(received);
});

/** Nine levels of ten references each. */
function bomb(): string {
  const names = [...'abcdefghi'];
  const lines = names.map((name, i) => {
    const before = i === 0 ? 'x' : `*${names[i - 1]}`;
    return `${name}: &${name} [${Array.from({ length: 10 }, () => before).join(', ')}]`;
  });
  return `${lines.join('\n')}\n`;
}

test('a reference that leads somewhere stands for what it names', () => {
  const { units } = readPlan('units:\n  - name: &n A\n    label: *n\n    captures: [{ file: a.csv }]\n');
  expect(units[0]?.label).toBe('A');
});

test('a name that YAML takes for a number or a yes is told as it is written', () => {
  for (const name of ['007', '1.10', '0x1F', 'true', '1e3', 'Ünit “x” ⚡ 100 % {a}', '-']) {
    const text = `units:\n  - name: ${name === '-' ? '"-"' : name}\n`;
    expect(() => readPlan(text)).toThrow(
      expect.objectContaining({ problem: 'plan.schema.noCapture', facts: expect.objectContaining({ name }) }),
    );
  }
});

test('a name that is none is not called missing', () => {
  expect(() => readPlan('units:\n  - name: [A]\n')).toThrow(
    expect.objectContaining({ problem: 'plan.schema.noText' }),
  );
  expect(() => readPlan('units:\n  - label: A\n')).toThrow(
    expect.objectContaining({ problem: 'plan.schema.missing' }),
  );
});
