import { Command } from 'commander';
import { expect, test } from 'vitest';
import { measureFileOptions } from '../../src/cli/measureFiles.ts';
import { addMeasureOptions } from '../../src/cli/measureOptions.ts';

async function parsed(words: readonly string[]): ReturnType<typeof measureFileOptions> {
  const command = addMeasureOptions(new Command('measure'))
    .exitOverride()
    .configureOutput({ writeErr: () => {} });
  return measureFileOptions(command.parse(words, { from: 'user' }).opts(), command);
}

test('without options: no claims, no scales, a guard band, 50 orders, a sine to 5 %', async () => {
  expect(await parsed([])).toMatchObject({
    claims: [],
    scales: [],
    inverted: [],
    rule: 'guarded',
    orders: 50,
    sineThdPercent: 5,
  });
});

test('options that repeat are collected in the order given', async () => {
  const { scales, inverted, claims } = await parsed([
    ...['--scale', '10', '--scale', 'CH2=-0.5', '--scale', 'a=b=2'],
    ...['--invert', 'CH1', '--invert', 'CH 3'],
    ...['--claim', 'THD < 3 %', '--claim', 'pure sine'],
  ]);
  expect(scales).toEqual([
    { channel: null, factor: 10 },
    { channel: 'CH2', factor: -0.5 },
    { channel: 'a=b', factor: 2 },
  ]);
  expect(inverted).toEqual(['CH1', 'CH 3']);
  expect(claims?.map(({ text }) => text)).toEqual(['THD < 3 %', 'pure sine']);
});

test('a meter is AC-coupled unless told otherwise', async () => {
  expect((await parsed(['--meter', '119.6'])).meter).toEqual({ readingV: 119.6, dcCoupled: false });
  expect((await parsed(['--meter', '119.6', '--meter-dc'])).meter).toEqual({
    readingV: 119.6,
    dcCoupled: true,
  });
});

test.each([
  ['--rule', 'strict'],
  ['--orders', '1'],
  ['--orders', '50.5'],
  ['--sine-thd', '0'],
  ['--sample-rate', '-1'],
  ['--meter', 'high'],
  ['--meter', ''],
  ['--scale', '0'],
  ['--scale', 'CH1='],
  ['--nominal', 'a lot'],
  ['--claim', 'best in town'],
  ['--colour', 'red'],
])('%s %s is refused in words that name the option', async (option, value) => {
  await expect(parsed([option, value])).rejects.toThrow(option);
});
