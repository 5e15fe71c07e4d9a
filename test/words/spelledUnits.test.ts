import { expect, it } from 'vitest';
import { spelledUnits } from '../../src/words/text.ts';

it('spells units after a number and leaves other letters alone', () => {
  expect(
    spelledUnits('It falls by 5.0\u00a0% at 600\u00a0W within 20\u00a0ms, from 120\u00a0V and 60\u00a0Hz.'),
  ).toBe('It falls by 5.0 percent at 600 watts within 20 milliseconds, from 120 volts and 60 hertz.');
  expect(spelledUnits('Inverter 2 Volta, 37° ahead, 2 kW')).toBe(
    'Inverter 2 Volta, 37 degrees ahead, 2 kilowatts',
  );
});
