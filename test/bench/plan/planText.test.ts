import { expect, test } from 'vitest';
import { guessCapture, lookedInto, planText } from '../../../src/bench/plan/planText.ts';
import { readPlan } from '../../../src/bench/plan/readPlan.ts';

test.each([
  ['a-red-300w.csv', 'a-red', 'sweep', 300],
  ['red/1.2kW heater.csv', 'red', 'sweep', 1200],
  ['blue_no-load.csv', 'blue', 'sweep', 0],
  ['green idle.csv', 'green', 'sweep', 0],
  ['red-step-600w.csv', 'red', 'step', 600],
  ['green-transfer.csv', 'green', 'transfer', null],
  ['evening/wave7.csv', 'evening', 'sweep', null],
  ['wave7.csv', 'unit', 'sweep', null],
  ['red/300w/ch1.csv', 'red', 'sweep', 300],
  ['300w/ch1.csv', 'unit', 'sweep', 300],
  ['red-no-load/ch1.csv', 'red', 'sweep', 0],
  ['red/step/ch1.csv', 'step', 'sweep', null],
  ['300week.csv', 'unit', 'sweep', null],
] as const)('%s', (file, unit, role, loadW) => {
  expect(guessCapture(file)).toEqual({ file, unit, role, loadW });
});

test('a plan written from files is a plan that can be read, by rising load', () => {
  const files = [
    'red-900w.csv',
    'red-0w.csv',
    'red-step-600w.csv',
    'yes.csv',
    '# "odd": name.csv',
    'b/t-transfer.csv',
  ];
  const { units } = readPlan(planText(files));
  expect(units.map(({ name }) => name)).toEqual(['red', 'unit', 't']);
  const [red, unit, transfer] = units;
  expect(red?.captures.map(({ file, told }) => [file, told.loadW])).toEqual([
    ['red-0w.csv', 0],
    ['red-900w.csv', 900],
  ]);
  expect(red?.steps.map(({ file, told }) => [file, told.toW])).toEqual([['red-step-600w.csv', 600]]);
  expect(unit?.captures.map(({ file }) => file)).toEqual(['yes.csv', '# "odd": name.csv']);
  expect(transfer?.transfers.map(({ file }) => file)).toEqual(['b/t-transfer.csv']);
});

test('its commented lines are a plan too, once the marks are taken away', () => {
  const lines = planText(['red-0w.csv', 'red-transfer.csv'])
    .replaceAll('# nominal', 'nominal')
    .replaceAll('# direction', 'direction')
    .replaceAll('    #  - ', '      - ');
  const { units } = readPlan(
    lines.replaceAll('    # energy:', '    energy:').replaceAll('    #   - {', '      - {'),
  );
  expect(units[0]?.claims.map(({ quantity }) => quantity)).toEqual([
    ...['waveform', 'rmsV', 'frequencyHz', 'thdPercent', 'crestFactor', 'transferS'],
    ...['powerW', 'surgeW', 'capacityWh', 'conversionEfficiencyPercent'],
  ]);
  expect(units[0]?.transfers[0]).toMatchObject({ direction: 'mains to battery' });
  expect(units[0]?.energy[0]).toMatchObject({ ratedWh: 512 });
});

test('what a capture shows counts for more than its name: a step or a transfer is filed as one', () => {
  const looked = new Map([
    ['red-600w.csv', lookedInto({ steps: [{}], events: [] } as never)],
    ['red-wave.csv', lookedInto({ steps: [], events: [{ kind: 'transfer' }] } as never)],
    ['red-300w.csv', lookedInto({ steps: [], events: [] })],
  ]);
  const [red] = readPlan(planText([...looked.keys()], looked)).units;
  expect(red?.captures.map(({ file }) => file)).toEqual(['red-300w.csv']);
  expect(red?.steps.map(({ file, told }) => [file, told.toW])).toEqual([['red-600w.csv', 600]]);
});
